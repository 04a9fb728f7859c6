// Draw the day's stops and sign them: the ticket decides, the rulebook draws, the entry keeps both. What was drawn stays
// sealed: the record shows a stop one panel ahead and not before.

import { ask, Refused } from '../rules/ask.js'
import { enter } from '../frame/enter.js'
import { withTicket } from '../outbox/ticket.js'
import { Trouble } from '../words/trouble.js'

/**
 * @param {{job: string, record: any, definitions: any[], crew: string, day: string, area: string, from: number, to: number,
 *   inspection?: string, extending?: string, draft: string}} what `inspection`: only where stricter was chosen; `extending`: the lot whose plan went on
 * @returns {Promise<string>} the lot's id
 * @throws {Trouble} `outbox.no_ticket`, or what the rulebook refuses as `reason.CODE`
 */
export function drawDay({ job, record, definitions, crew, day, area, from, to, inspection, extending, draft }) {
  return keepDrawn(job, 'work', { record, definitions, purpose: 'work', crew: crew.trim(), day, population: [{ area, from, to }],
    inspection, extends: extending }, draft)
}

/**
 * Draw by the next ticket, sign, keep.
 * @param {string} job @param {'work' | 'audit'} series of the ticket @param {any} what of `draw_lot`, but for the ticket
 * @param {string} [draft] @returns {Promise<string>} the lot's id @throws {Trouble} as above
 */
export function keepDrawn(job, series, what, draft) {
  return withTicket(job, series, async (ticket) => {
    const { subject, body } = await drawn({ call: 'draw_lot', ticket, ...what })
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
