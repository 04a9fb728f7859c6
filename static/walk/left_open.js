// What a walk leaves without an answer: said before it is closed, and never a reason to keep it open.

import { forStation, forWalk } from '../checklist/applies.js'
import { answerId, asked } from './sort_items.js'

/**
 * @param {any} record @param {any[]} definitions @param {any} walk
 * @returns {{item: any, station: any}[]} `station` null for what is asked of the whole walk
 */
export function leftOpen(record, definitions, walk) {
  const places = walk.stations.map((/** @type {string} */ id) => record.stations[id]).filter((/** @type {any} */ one) => one.reached === 'yes')
  const at = (/** @type {any} */ station, /** @type {any[]} */ sheets) => sheets.flatMap((definition) =>
    asked(record, definition, walk, station).filter((item) => !record.answers[answerId((station ?? walk).id, definition, item)]).map((item) => ({ item, station })))
  return [...at(null, forWalk(walk, definitions)), ...places.flatMap((/** @type {any} */ station) => at(station, forStation(record, definitions, station)))]
}
