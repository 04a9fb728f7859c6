// Items a glance can answer, and items that need a reading or a picture of their own.

/** Items that one press may answer together, as the definition marks them. @param {any} item compiled */
export function isQuick(item) {
  return item.quick === true
}

/** @param {string} place station or walk id @param {any} definition @param {any} item */
export function answerId(place, definition, item) {
  return `${place}/${definition.id}/${item.id}`
}

/**
 * Quick items that one press may answer: not answered yet, and with the picture there that the item asks for.
 * @param {any} record @param {string} place @param {any} definition @param {boolean} pictured whether the place has its pictures
 */
export function atOnce(record, place, definition, pictured) {
  return definition.items.filter((/** @type {any} */ item) => isQuick(item) && !record.answers[answerId(place, definition, item)] &&
    (item.photo !== 'required' || pictured))
}
