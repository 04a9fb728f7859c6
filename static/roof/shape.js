// A roof area's outline as a drawing: its own plane, x along the eave, y up the slope, true proportions.
// For the eye only. What is judged and printed is computed by the rulebook.

import { drawn } from '../frame/amount.js'
import { chords } from './chords.js'

/** @param {any} area @returns {{points: number[][], left: number, low: number, width: number, height: number}} in the outline's unit */
export function extent(area) {
  const points = area.outline.points.map((/** @type {string[]} */ point) => point.map(Number))
  const xs = points.map((/** @type {number[]} */ point) => point[0])
  const ys = points.map((/** @type {number[]} */ point) => point[1])
  const left = Math.min(...xs)
  const low = Math.min(...ys)
  return { points, left, low, width: Math.max(...xs) - left, height: Math.max(...ys) - low }
}

/** Coverage of one panel in the outline's unit, or null. @param {any} area @param {any} assembly */
export function coverage(area, assembly) {
  return drawn(area.coverage ?? assembly?.coverage, area.outline.unit)
}

/**
 * Where panel `n` lies along the eave, from the outline's first edge in drawing direction.
 * @param {any} area @param {number} wide coverage @param {number} n from 1 @returns {{from: number, to: number}} from the outline's left side
 */
export function strip(area, wide, n) {
  const { width } = extent(area)
  const near = Math.min((n - 1) * wide, width)
  const far = Math.min(n * wide, width)
  return area.start === 'right' ? { from: width - far, to: width - near } : { from: near, to: far }
}

/** The panel at `x` from the outline's left side. @param {any} area @param {number} wide @param {number} x @param {number} count */
export function panelAt(area, wide, x, count) {
  const { width } = extent(area)
  const along = area.start === 'right' ? width - x : x
  return Math.min(Math.max(1, Math.floor(along / wide) + 1), count)
}

/** Where panel `n` hides its fasteners: its leading side; of the last one, finished at an edge, the middle. @param {any} area @param {number} wide @param {number} n @param {number} count */
export function seam(area, wide, n, count) {
  const { from, to } = strip(area, wide, n)
  if (n >= count) return (from + to) / 2
  return area.start === 'right' ? from : to
}

/**
 * The ends of the roof on the line at `x` (from the outline's left side), from the outline's lowest point. Openings are passed over.
 * @param {any} area @param {number} x @returns {{low: number, high: number}}
 */
export function ends(area, x) {
  const { points, left, low, width, height } = extent(area)
  const pieces = chords([points], left + Math.min(Math.max(x, width * 1e-9), width * (1 - 1e-9)))
  return pieces.length ? { low: pieces[0][0] - low, high: pieces[pieces.length - 1][1] - low } : { low: 0, high: height }
}

/** Names of the area's edges as they are entered; edge i runs from point i to i + 1. @param {any} area @returns {{name: string, from: number[], to: number[]}[]} */
export function edges(area) {
  const { points } = extent(area)
  return points.map((from, at) => ({ name: area.edges?.[at] ?? 'eave', from, to: points[(at + 1) % points.length] }))
}
