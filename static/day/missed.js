// Stops a mark would cover before anybody looked all over them: said before the press, and never in its way. A stop is
// no hold, and what is covered already is no news.

import { revealed } from './standing.js'

const UNLOOKED = ['due', 'part', 'next']

/** @param {any} record @param {any} lot @param {number} to @returns {number[]} panels */
export function missedStops(record, lot, to) {
  return revealed(record, lot).filter((one) => UNLOOKED.includes(one.state) && one.panel < to && one.panel >= (lot.placed_to ?? 0)).map((one) => one.panel)
}
