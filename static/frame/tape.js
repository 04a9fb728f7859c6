// A distance as it is found with a tape: feet with inches to the nearest half, or metres to the centimetre. The place
// itself is recorded as it was drawn; half an inch is no farther than the head of its screw.

import { number } from '../words/number.js'
import { shown } from './amount.js'

const INCHES = /** @type {Record<string, number>} */ ({ ft: 12, in: 1 })

/** @param {{value: string, unit: string} | null | undefined} distance @returns {string} `7 ft 6 in` */
export function tape(distance) {
  if (!distance) return '—'
  const inches = INCHES[distance.unit]
  if (inches) return feet(Math.round(Number(distance.value) * inches * 2))
  return distance.unit === 'm' ? number(distance.value, 'm', 2) : shown(distance)
}

/** @param {number} halves half inches */
function feet(halves) {
  const [ft, rest] = [Math.floor(halves / 24), halves % 24]
  const whole = Math.floor(rest / 2)
  const inches = `${whole || rest % 2 === 0 ? whole : ''}${rest % 2 ? `${whole ? ' ' : ''}1/2` : ''}\u00a0in`
  if (!ft) return inches
  return rest ? `${ft}\u00a0ft ${inches}` : `${ft}\u00a0ft`
}
