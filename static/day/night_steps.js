// The end-of-day walk in the order of its ten minutes: loose things and the night's seal, the whole leg, the rest. Pure.

const LOOSE = ['nothing_loose', 'seams_closed', 'night_seal']
const LEG = ['night_seam']

/** @param {any} own the end-of-day walk, compiled, or undefined @returns {any[][]} items of the first, the second and the last step */
export function stepsOf(own) {
  const items = own?.items ?? []
  const named = (/** @type {string[]} */ ids) => items.filter((/** @type {any} */ item) => ids.includes(item.id))
  return [named(LOOSE), named(LEG), items.filter((/** @type {any} */ item) => ![...LOOSE, ...LEG].includes(item.id))]
}

/**
 * Which of the first three steps have all their answers: loose things, the whole leg, the drawn places.
 * @param {any} record @param {any} own @param {any} walk @param {any} night of the lot @param {any[][]} steps @returns {boolean[]}
 */
export function doneOf(record, own, walk, night, [loose, leg]) {
  const answered = (/** @type {any[]} */ items) => Boolean(walk) && items.every((item) => record.answers[`${walk.id}/${own.id}/${item.id}`])
  return [answered(loose), answered(leg), night.places.every((/** @type {any} */ place) => place.station), false]
}
