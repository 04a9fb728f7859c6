// What is known of a place: a word and a shape for it, never a colour alone.

import { itemsFor } from '../checklist/items.js'
import { forStation } from '../checklist/applies.js'

export const MARKS = /** @type {Record<string, string>} */ ({ pass: '✓', fail: '✕', unsure: '?', open: '…', unsafe: '△', covered: '▬' })

/** @param {any} record @param {any[]} definitions @param {any} station @returns {'pass'|'fail'|'unsure'|'open'|'unsafe'|'covered'} */
export function stateOf(record, definitions, station) {
  if (station.reached !== 'yes') return station.reached
  const answers = Object.values(record.answers).filter((/** @type {any} */ answer) => answer.station === station.id)
  const results = answers.map((/** @type {any} */ answer) => answer.result)
  if (results.includes('fail')) return 'fail'
  const assembly = record.assemblies[record.areas[station.area]?.assembly]
  const asked = forStation(record, definitions, station).flatMap((one) => itemsFor(one, assembly)).length
  if (answers.length < asked || asked === 0) return 'open'
  return results.some((/** @type {string} */ one) => one === 'too_close' || one === 'not_determinable') ? 'unsure' : 'pass'
}
