// The walk in which today's looks are recorded: begun today by this person, still open.

import { today } from '../frame/today.js'

/**
 * @param {any} record @param {any[]} definitions @param {any} person @param {string} id of the checklist: DAY_WATCH or END_OF_DAY
 * @returns {any} the newest such walk, or null
 */
export function walkToday(record, definitions, person, id) {
  const own = definitions.filter((one) => one.id === id).map((one) => one.digest)
  const found = openToday(record, person).filter((walk) => own.includes(walk.definition))
  return found.at(-1) ?? null
}

/** This person's walks of today that are not signed, oldest first. @param {any} record @param {any} person @returns {any[]} */
export function openToday(record, person) {
  return Object.values(record.walks)
    .filter((/** @type {any} */ walk) => walk.by === person.id && !walk.signoff && today(new Date(walk.at)) === today())
    .sort((/** @type {any} */ a, /** @type {any} */ b) => (a.at < b.at ? -1 : 1))
}
