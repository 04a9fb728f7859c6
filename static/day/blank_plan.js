// What a day's plan begins with: the next open panels of an area, the crew of last time, the strictness its series asks.

import { sorted } from '../roof/order.js'
import { openLots, plannedTo } from './standing.js'

export const STRICTER = ['reduced', 'normal', 'tightened']
const FIRST_TIME = 20 // panels offered where nobody has planned a day yet

/** @param {any} record @param {any} person @param {any} lot to extend, or null @param {string} day */
export function blankPlan(record, person, lot, day) {
  const crews = knownCrews(record)
  const areas = sorted(record.areas, 'name')
  const open = areas.find((one) => record.coverage?.[one.id]?.counts.to_come > 0) // a finished one waits for nobody
  const area = lot?.population[0].area ?? (open ?? areas[0])?.id ?? ''
  return { area, crew: lot?.crew ?? crews[0] ?? '', other: crews.length === 0, day: lot?.day ?? day, inspection: '', ...(lot ? further(record, lot) : nextPanels(record, person, area)) }
}

/** The crews that worked here, the last first. @param {any} record @returns {string[]} */
export function knownCrews(record) {
  const all = [...Object.values(record.lots ?? {}), ...Object.values(record.walks)].sort((/** @type {any} */ a, /** @type {any} */ b) => (a.at < b.at ? 1 : -1))
  return [...new Set(/** @type {string[]} */ (all.map((/** @type {any} */ one) => one.crew?.trim() ?? '')))].filter(Boolean).slice(0, 4)
}

/** The first panel of an area that nobody has set or planned, and as many as last time. @param {any} record @param {any} person @param {string} area */
export function nextPanels(record, person, area) {
  const last = record.areas[area]?.panel_count ?? 999
  const open = record.coverage?.[area]?.runs.find((/** @type {any} */ run) => run.state === 'to_come')?.from ?? 1
  const here = openLots(record, person).filter((lot) => lot.population[0].area === area)
  const from = Math.min(Math.max(open, ...here.map((lot) => plannedTo(record, lot) + 1)), last)
  return { from, to: Math.min(from + usual(record) - 1, last) }
}

/** What was set beyond the plan, else the panels after it. @param {any} record @param {any} lot */
function further(record, lot) {
  const last = record.areas[lot.population[0].area]?.panel_count ?? 999
  const from = Math.min(lot.extra?.[0]?.[0] ?? plannedTo(record, lot) + 1, last)
  return { from, to: Math.min(Math.max(from + 4, lot.extra?.at(-1)?.[1] ?? 0), last) }
}

/** @param {any} record */
function usual(record) {
  const [newest] = Object.values(record.lots ?? {}).filter((/** @type {any} */ lot) => lot.purpose === 'work' && !lot.extends).sort((/** @type {any} */ a, /** @type {any} */ b) => (a.at < b.at ? 1 : -1))
  return newest ? newest.population[0].to - newest.population[0].from + 1 : FIRST_TIME
}

/** What may be chosen where the crew's series calls for this: that, or stricter. @param {string} called `normal`, `tightened`, `reduced` or `stopped` */
export function asked(called) {
  const proposed = called === 'stopped' ? 'tightened' : called
  return { proposed, choices: STRICTER.slice(STRICTER.indexOf(proposed)) }
}
