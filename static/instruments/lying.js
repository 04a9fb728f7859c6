// A phone lying on a slope, from the orientation that its browser tells. Pure.
//
// W3C Device Orientation: turned about its axes in the order Z-X'-Y'', the phone's long edge rises by `beta`, whatever
// `gamma` is; so a phone turned end for end on the same plane tells the opposite angle, and its own error stays.

export const LEAST = 20 // readings, the fewest of which the rulebook takes the median
export const WANTED = 24
const STEEPEST = 85 // degrees: beyond it nothing lies, and the rulebook takes none
const SIDEWAYS = 10 // degrees of lean across the slope beyond which the long edge does not lie along it

/** @param {{beta: number | null, gamma: number | null}} event @returns {{along: number, across: number} | null} degrees */
export function lying({ beta, gamma }) {
  if (typeof beta !== 'number' || !Number.isFinite(beta) || Math.abs(beta) > STEEPEST) return null
  return { along: beta, across: gamma ?? 0 }
}

/** Whether the long edge does not lie along the slope. @param {number} across degrees */
export function askew(across) {
  return Math.abs(across) > SIDEWAYS
}

/**
 * Readings as the rulebook takes them: rising is positive, both ways round.
 * @param {number[]} along degrees, one way round @param {number} way 1 or -1, the sign of the first way round
 * @returns {{value: string, unit: 'deg'}[]}
 */
export function asReadings(along, way) {
  return along.map((one) => ({ value: hundredths(one * way), unit: 'deg' }))
}

/** The way the long edge points at first: 1 when its top is up the slope. @param {number[]} along */
export function wayOf(along) {
  return along.filter((one) => one < 0).length * 2 > along.length ? -1 : 1
}

/** Whether the phone was plainly not turned: it still tells the same side up. @param {number[]} along @param {number} first `wayOf` before */
export function notTurned(along, first) {
  return wayOf(along) === first && along.every((one) => Math.abs(one) > 3)
}

/** @param {number} degrees decimal text, two places at most */
function hundredths(degrees) {
  const text = degrees.toFixed(2).replace(/\.?0+$/, '')
  return text === '-0' ? '0' : text
}
