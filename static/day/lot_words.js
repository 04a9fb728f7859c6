// How a crew would name its day: area, crew, panels, date.

import { say } from '../words/say.js'
import { areaOf, plannedTo } from './standing.js'

/** @param {any} record @param {any} lot */
export function lotWords(record, lot) {
  return `${record.areas[areaOf(lot)]?.name ?? '—'} · ${lot.crew} · ${say('day.panels', { from: lot.population[0].from, to: plannedTo(record, lot) })} · ${lot.day}`
}
