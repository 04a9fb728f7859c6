// A walk begun for a stop, a hold or the night leg: what their lot already says need not be chosen again.

import { DAY_WATCH, END_OF_DAY } from '../checklist/applies.js'

/**
 * @param {any} record @param {any[]} definitions that may be begun @param {string[]} then the steps it was begun from, as `['stop', LOT, PANEL]`
 * @returns {{definition?: string, areas?: string[], crew?: string}}
 */
export function forDay(record, definitions, then) {
  const lot = record.lots?.[then[1]]
  if (!lot) return {}
  const own = definitions.find((one) => one.id === (then[0] === 'night' ? END_OF_DAY : DAY_WATCH))
  const areas = [...new Set(/** @type {string[]} */ (lot.population.map((/** @type {any} */ row) => row.area)))].filter((id) => record.areas[id])
  return { ...(own && { definition: own.digest }), areas, crew: lot.crew }
}
