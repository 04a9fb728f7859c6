// What is known of a place: a word and a shape for it, never a colour alone.

import { itemsFor } from '../checklist/items.js'
import { forStation } from '../checklist/applies.js'

export const MARKS = /** @type {Record<string, string>} */ ({ pass: '✓', fail: '✕', unsure: '?', open: '…', unsafe: '△', covered: '▬' })

/** @typedef {'pass'|'fail'|'unsure'|'open'|'unsafe'|'covered'} State */

/** The answers of each station, sorted out once for each record. @type {WeakMap<any, Map<string, any[]>>} */
const sorted = new WeakMap()

/** @param {any} record @returns {Map<string, any[]>} */
function answersOf(record) {
  const before = sorted.get(record.answers)
  if (before) return before
  const found = new Map()
  for (const answer of Object.values(record.answers)) {
    const own = found.get(answer.station)
    if (own) own.push(answer)
    else found.set(answer.station, [answer])
  }
  sorted.set(record.answers, found)
  return found
}

/** @param {any} record @param {any[]} definitions @param {any} station @returns {State} */
export function stateOf(record, definitions, station) {
  if (station.reached !== 'yes') return station.reached
  const answers = answersOf(record).get(station.id) ?? []
  const results = answers.map((/** @type {any} */ answer) => answer.result)
  if (results.includes('fail')) return 'fail'
  const assembly = record.assemblies[record.areas[station.area]?.assembly]
  const asked = forStation(record, definitions, station).flatMap((one) => itemsFor(one, assembly)).length
  if (answers.length < asked || asked === 0) return 'open'
  return results.some((/** @type {string} */ one) => one === 'too_close' || one === 'not_determinable') ? 'unsure' : 'pass'
}

/** Of every station, by id. @param {any} record @param {any[]} definitions @returns {Record<string, State>} */
export function statesOf(record, definitions) {
  return Object.fromEntries(Object.values(record.stations).map((/** @type {any} */ one) => [one.id, stateOf(record, definitions, one)]))
}
