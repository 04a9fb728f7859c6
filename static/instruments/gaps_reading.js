// What a count over a length, a widest gap or a list of gaps says, as a reading carries it. Pure.

import { distances } from './distances.js'

/**
 * What is whole of it; nothing of a list with one word that was not understood, and nothing of the rest beside a number
 * that is wrong: a widest gap alone would be judged as if nobody had counted.
 * @param {any} known `wrong`: which of the numbers stand wrong @param {string} near @param {string} far @param {number} most
 */
export function gapsReading({ way, count, over, widest, text, wrong: amiss }, near, far, most) {
  if (way === 'list') {
    const { values, wrong } = distances(text, near, most)
    return values.length && !wrong.length ? { gaps: values.map((value) => ({ value, unit: near })) } : null
  }
  if (Object.values(amiss).includes(true) || inParts(count)) return null
  if (meanAbove({ count, over, widest }, near, far) !== null) return null
  const counted = count !== null && over !== null
  const found = { ...(widest === null ? {} : { gaps: [{ value: widest, unit: near }] }), ...(counted ? { count: Number(count), over: { value: over, unit: far } } : {}) }
  return Object.keys(found).length ? found : null
}

const NEAR = /** @type {Record<string, number>} */ ({ 'ft in': 12, 'm mm': 1000 })

/**
 * The mean gap where the widest is said to be less than it, in `near`: no widest gap is; null where they agree. Two in
 * a hundred are left for a length that was rounded (common practice, no source).
 * @param {any} known @param {string} near @param {string} far
 */
export function meanAbove({ count, over, widest }, near, far) {
  const mean = Number(over) * NEAR[`${far} ${near}`] / (Number(count) - 1)
  return widest !== null && count !== null && over !== null && Number.isFinite(mean) && Number(widest) < 0.98 * mean ? mean.toFixed(near === 'mm' ? 0 : 2) : null
}

/** Whether a count is no whole number. @param {string | null} count */
export function inParts(count) {
  return count !== null && !/^\d+$/.test(count)
}
