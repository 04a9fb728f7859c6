// Which answer belongs to which item at a place, and what one press may answer.

import { applies, isQuick } from '../checklist/items.js'

/** Judged by a person's look, without a reading. @param {any} item compiled */
export function isLook(item) {
  return item.kind === 'judge' && !item.rule && (!item.instrument || item.instrument === 'choice')
}

/** @param {string} place station or walk id @param {any} definition @param {any} item */
export function answerId(place, definition, item) {
  return `${place}/${definition.id}/${item.id}`
}

/**
 * The items asked at a place, or of a whole walk: there, what speaks of any of its areas.
 * @param {any} record @param {any} definition @param {any} walk @param {any} station null for the whole walk @returns {any[]}
 */
export function asked(record, definition, walk, station) {
  const areas = (station ? [station.area] : walk.areas).map((/** @type {string} */ id) => record.areas[id])
  const assemblies = areas.map((/** @type {any} */ area) => record.assemblies[area?.assembly] ?? null)
  return definition.items.filter((/** @type {any} */ item) => assemblies.length === 0 || assemblies.some((/** @type {any} */ one) => !one || applies(item, one)))
}

/** Quick items not answered yet: what "all as approved" speaks of. @param {any} record @param {any} definition @param {any} walk @param {any} station @returns {any[]} */
export function atOnce(record, definition, walk, station) {
  return asked(record, definition, walk, station).filter((item) => isQuick(item) && !record.answers[answerId((station ?? walk).id, definition, item)])
}
