// Work that waits too long on one phone: amber after 12 h, red after 24 h, well before a browser that was not used for
// days may clear what it keeps. Told by words and a mark each, and by colour besides.

import { html } from './view.js'
import { say } from '../words/say.js'
import { age } from './age.js'

const HOUR = 3_600_000
const STAGES = /** @type {{stage: 'red' | 'amber', from: number, mark: string}[]} */ ([
  { stage: 'red', from: 24 * HOUR, mark: '■' }, { stage: 'amber', from: 12 * HOUR, mark: '▲' }])

/** @param {string | null} oldest device time of the oldest unsent item @param {number} [now] ms */
export function overdue(oldest, now = Date.now()) {
  const waited = oldest === null ? 0 : now - Date.parse(oldest)
  return STAGES.find(({ from }) => waited >= from) ?? null
}

/** @param {{standing: any}} props what `useStanding()` gives: of everybody on this phone */
export function Overdue({ standing }) {
  const late = standing ? overdue(standing.oldestOfAll) : null
  if (!late) return null
  return html`<span class=${`line overdue ${late.stage}`} data-name="strip-overdue" data-stage=${late.stage}>
    <span aria-hidden="true">${late.mark}</span> ${say(`overdue.${late.stage}`, { age: age(standing.oldestOfAll) })}</span>`
}
