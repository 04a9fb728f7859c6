// A place tapped on the drawing, no finer than a finger on a phone can mean.

import { step } from '../frame/amount.js'

const GRAIN = /** @type {Record<string, number>} */ ({ ft: 0.5, m: 0.1, in: 6, cm: 10, mm: 100 })

/** @param {number} at in `unit` @param {string} unit @returns {string} decimal text */
export function rounded(at, unit) {
  const grain = GRAIN[unit] ?? 1
  return step((Math.round(at / grain) * grain).toFixed(3), 0)
}
