// Draw a lot of an audit or a rework and sign it, as a day's is drawn: by a ticket, once, never again.

import { keepDrawn } from '../day/draw_day.js'
import { today } from '../frame/today.js'

/**
 * @param {{job: string, record: any, definitions: any[], purpose: 'audit' | 'rework', series: 'work' | 'audit', crew: string,
 *   population: {area: string, from: number, to: number}[], reworks?: string, draft?: string}} what `series`: of the ticket
 * @returns {Promise<string>} the lot's id
 * @throws {Trouble} `outbox.no_ticket`, or what the rulebook refuses as `reason.CODE`
 */
export function drawLot({ job, series, draft, ...what }) {
  return keepDrawn(job, series, { day: today(), ...what }, draft)
}
