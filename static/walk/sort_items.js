// Which answer belongs to which item at a place, and what one press may answer.

import { isQuick, itemsFor } from '../checklist/items.js'

/** Judged by a person's look, without a reading. @param {any} item compiled */
export function isLook(item) {
  return item.kind === 'judge' && !item.rule && (!item.instrument || item.instrument === 'choice')
}

/** @param {string} place station or walk id @param {any} definition @param {any} item */
export function answerId(place, definition, item) {
  return `${place}/${definition.id}/${item.id}`
}

/** The items asked at a place. @param {any} record @param {any} definition @param {any} station null for the whole walk @returns {any[]} */
export function asked(record, definition, station) {
  return itemsFor(definition, station ? record.assemblies[record.areas[station.area]?.assembly] : null)
}

/** Quick items not answered yet: what "all as approved" speaks of. @param {any} record @param {any} definition @param {any} walk @param {any} station @returns {any[]} */
export function atOnce(record, definition, walk, station) {
  return asked(record, definition, station).filter((item) => isQuick(item) && !record.answers[answerId((station ?? walk).id, definition, item)])
}
