// Which checklist definitions speak of a place, a walk, a person.

import { applies } from './items.js'

/**
 * The definitions asked at a station: the walk's own where it is made for stations and fits, else every one
 * of the job that fits what is fastened there.
 * @param {any} record @param {any[]} definitions @param {any} station @returns {any[]}
 */
export function forStation(record, definitions, station) {
  const assembly = record.assemblies[record.areas[station.area]?.assembly]
  const fitting = definitions.filter((one) => one.per === 'station' && applies(one, assembly))
  const own = fitting.filter((one) => one.digest === record.walks[station.walk]?.definition)
  return own.length ? own : fitting
}

/** The definitions asked once for a whole walk. @param {any} walk @param {any[]} definitions @returns {any[]} */
export function forWalk(walk, definitions) {
  return definitions.filter((one) => one.per === 'walk' && one.digest === walk.definition)
}

/** What this person may begin, the whole-walk ones first. @param {any[]} definitions @param {any} person */
export function mayBegin(definitions, person) {
  const mine = definitions.filter((one) => !one.performed_by?.length || one.performed_by.includes(person.role))
  return [...mine].sort((a, b) => Number(b.per === 'walk') - Number(a.per === 'walk') || (a.id < b.id ? -1 : 1))
}
