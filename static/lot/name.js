// How a lot, a severity and a share are named on a screen.

import { say } from '../words/say.js'
import { number } from '../words/number.js'
import { panels } from './states.js'

export const SEVERITIES = ['critical', 'major', 'minor']

/** `Quay slope, panels 1 to 30` @param {any} record @param {any} lot */
export function lotName(record, lot) {
  if (lot.population.length === 1) return `${record.areas[lot.population[0].area]?.name ?? '—'}, ${panels(lot.population[0])}`
  const areas = new Set(lot.population.map((/** @type {any} */ row) => row.area)).size
  return say('lot.over_areas', { n: areas, size: lot.size })
}

/** `Work · Crew 2 · 2026-09-14` @param {any} lot */
export function lotOver(lot) {
  return [say(`lot.purpose.${lot.purpose}`), lot.crew, lot.day].filter(Boolean).join(' · ')
}

/** `0.1294` -> `12.9 %`, as the report prints a share; the record keeps all of it. @param {number | string} share */
export function percent(share) {
  return number(100 * Number(share), '%')
}
