// Every temperature of the metal taken on a walk, and which of them speaks for a moment. Pure.

/** Seconds for which a temperature speaks: one cloud moves the metal by tens of degrees in minutes. */
export const HOLDS = 600

/**
 * @typedef {{value: string, unit: string, uncertainty: any, by: string, at: number}} Taken `at` device milliseconds
 * @typedef {{first: Taken | null, taken: Taken[], changed: number[]}} Kept `first`: the walk's own as this phone first saw it;
 *   `changed`: when sun or shade changed
 */

/** Whether an item's rule asks for the metal's temperature at the reading itself. @param {any} item compiled */
export function wantsMetal(item) {
  return Object.values(item?.rule?.inputs ?? {}).includes('reading.metal_temperature')
}

/** What the walk's own entry says. @param {any} walk @returns {Taken | null} */
export function ofWalk(walk) {
  if (!walk?.metal_temperature) return null
  return { ...walk.metal_temperature, uncertainty: walk.metal_uncertainty, by: walk.metal_temperature_by, at: Date.parse(walk.at) }
}

/**
 * All that were taken. A corrected walk has a new time, but its metal was measured anew only where the number or the
 * instrument is another.
 * @param {any} walk @param {Kept} kept @returns {Taken[]}
 */
export function allTaken(walk, { first, taken }) {
  const own = ofWalk(walk)
  const same = own && first && ['value', 'unit', 'by'].every((name) => /** @type {any} */ (own)[name] === /** @type {any} */ (first)[name])
  return [first, same ? null : own, ...taken].filter((one) => one !== null)
}

/**
 * The temperature nearest to a moment, before or after it, with no change of sun or shade between.
 * @param {Taken[]} taken @param {number[]} changed @param {number} moment milliseconds
 * @returns {(Taken & {age: number}) | null} `age` whole seconds
 */
export function speaking(taken, changed, moment) {
  const parted = (/** @type {Taken} */ one) => changed.some((turn) => (turn <= one.at) !== (turn <= moment))
  const far = (/** @type {Taken} */ one) => Math.abs(moment - one.at)
  const [nearest] = taken.filter((one) => !parted(one)).sort((a, b) => far(a) - far(b) || b.at - a.at)
  return nearest ? { ...nearest, age: Math.floor(far(nearest) / 1000) } : null
}

/** Whether it must be asked again. @param {{age: number} | null} metal */
export function due(metal) {
  return !metal || metal.age > HOLDS
}

/** As a reading carries it. @param {Taken & {age: number}} metal */
export function inReading({ value, unit, uncertainty, by, age }) {
  return { metal_temperature: { value, unit }, metal_uncertainty: uncertainty, metal_by: by, metal_age: age }
}

/** What an earlier answer to the same picture carried: it may be known to this record and to no phone. @param {any} answer @param {string} picture sha256 @param {number} moment @returns {Taken | null} */
export function ofAnswer(answer, picture, moment) {
  const { metal_temperature: metal, metal_uncertainty: uncertainty, metal_by: by, metal_age: age } = answer?.reading ?? {}
  if (!metal || !answer.photos?.includes(picture)) return null
  return { ...metal, uncertainty, by, at: moment - 1000 * age }
}
