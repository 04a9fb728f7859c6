// Draw a lot and sign it: the ticket decides, the rulebook draws, the entry keeps both. Made once, never again.

import { ask, Refused } from '../rules/ask.js'
import { enter } from '../frame/enter.js'
import { today } from '../frame/today.js'
import { withTicket } from '../outbox/ticket.js'
import { Trouble } from '../words/trouble.js'

/**
 * @param {{job: string, record: any, definitions: any[], purpose: 'audit' | 'rework', series: 'work' | 'audit', crew: string,
 *   population: {area: string, from: number, to: number}[], reworks?: string, draft?: string}} what `series`: of the ticket
 * @returns {Promise<string>} the lot's id
 * @throws {Trouble} `outbox.no_ticket`, or what the rulebook refuses as `reason.CODE`
 */
export function drawLot({ job, series, draft, ...what }) {
  return withTicket(job, series, async (ticket) => {
    const { subject, body } = await drawn({ call: 'draw_lot', ticket, day: today(), ...what })
    await enter({ job, kind: 'lot', subject, body, draft })
    return subject
  })
}

/** @param {any} request @returns {Promise<{subject: string, body: any}>} */
async function drawn(request) {
  try {
    return await ask(request)
  } catch (fault) {
    throw fault instanceof Refused ? new Trouble(`reason.${fault.code}`, { field: fault.field, value: String(fault.value) }) : fault
  }
}
