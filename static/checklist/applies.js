// Which checklist definitions speak of a place, a walk, a person.

import { applies } from './items.js'

/**
 * The definitions asked at a station: of an audit's drawn place what its draw asks and no more, else the walk's own where
 * it is made for stations and fits, else every one of the job that fits what is fastened there.
 * @param {any} record @param {any[]} definitions @param {any} station @returns {any[]}
 */
export function forStation(record, definitions, station) {
  const lot = record.lots?.[station.lot]
  if (lot?.purpose === 'audit') return drawnFor(lot, definitions)
  const assembly = record.assemblies[record.areas[station.area]?.assembly]
  const fitting = definitions.filter((one) => one.per === 'station' && applies(one, assembly))
  const own = fitting.filter((one) => one.digest === record.walks[station.walk]?.definition)
  return own.length ? own : fitting
}

/** The items that an audit asks at each of its places, under their definitions. @param {any} lot @param {any[]} definitions */
function drawnFor(lot, definitions) {
  const names = Object.values(lot.asks).flat()
  return definitions.map((one) => ({ ...one, items: one.items.filter((/** @type {any} */ item) => names.includes(`${one.id}/${item.id}`)) })).filter((one) => one.items.length > 0)
}

/** The definitions asked once for a whole walk, or of its one area. @param {any} walk @param {any[]} definitions @returns {any[]} */
export function forWalk(walk, definitions) {
  return definitions.filter((one) => one.per !== 'station' && one.digest === walk.definition)
}

const ORDER = ['walk', 'station', 'area']

/**
 * What this person may begin: whole walks first, then places, then what is asked of one area. From the ground
 * only the last.
 * @param {any[]} definitions @param {any} person @param {boolean} [ground]
 */
export function mayBegin(definitions, person, ground = false) {
  const mine = definitions.filter((one) => (!one.performed_by?.length || one.performed_by.includes(person.role)) && (!ground || one.per === 'area'))
  return [...mine].sort((a, b) => ORDER.indexOf(a.per) - ORDER.indexOf(b.per) || (a.id < b.id ? -1 : 1))
}

/** What stops and holds are looked at with, and what closes a day: both are begun from the day's own screens. */
export const DAY_WATCH = 'day-watch'
export const END_OF_DAY = 'end-of-day-walk'

/**
 * What this person most likely begins now: what they walked last, unless that is asked once of an area or belongs to
 * the day's stops; else the first they may begin.
 * @param {any[]} mine from `mayBegin` @param {any[]} walks the person's own, newest first
 */
export function likely(mine, walks) {
  const alone = mine.filter((one) => one.id !== DAY_WATCH)
  const last = walks.map((walk) => alone.find((one) => one.digest === walk.definition && one.per !== 'area')).find(Boolean)
  return last ?? alone[0] ?? mine[0] ?? null
}
