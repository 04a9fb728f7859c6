// Offsets in words. Inside the rulebook they have a sign; a person reads toward the ridge or toward the eave.

import { say } from '../words/say.js'
import { number } from '../words/number.js'

/** @param {number} offset toward the ridge when above zero @param {string} unit */
export function toward(offset, unit) {
  const size = number(Math.abs(offset), unit)
  if (/^0(?![.\d])/.test(size)) return say('toward.middle') // zero as printed
  return say(offset > 0 ? 'toward.ridge' : 'toward.eave', { distance: size })
}

/** `1` where the free end lies toward the ridge or is unknown, `-1` toward the eave. @param {any} answer of slot or clip */
export function freeSign(answer) {
  return answer.understood?.free_end === 'eave' ? -1 : 1
}

/**
 * The window and the reading, turned toward the ridge, numbers in one unit.
 * @param {any} answer of `slot@1` or `clip@1`
 * @returns {{unit: string, low: number, high: number, aim: number, at: number | null, bound: number} | null}
 */
export function turned(answer) {
  const { low, high, aim, toward_ridge: at, bound } = answer.values ?? {}
  if (!low || !high) return null
  const sign = freeSign(answer)
  const ends = [sign * low.value, sign * high.value]
  return { unit: low.unit, low: Math.min(...ends), high: Math.max(...ends), aim: sign * aim.value, at: at ? at.value : null, bound: bound?.value ?? 0 }
}
