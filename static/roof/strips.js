// Panels as strips of an outline, and where each is held: for the eye only. Pure.

import { chords } from './chords.js'

const MOST = 2000

/**
 * @param {number[][]} points the outline @param {number} wide coverage, in the outline's unit @param {string} start `left` or `right`
 * @returns {{from: number, to: number}[]} panel n at n − 1, as x from left to right
 */
export function strips(points, wide, start) {
  if (!(wide > 0) || points.length < 3) return []
  const xs = points.map((one) => one[0])
  const left = Math.min(...xs), right = Math.max(...xs)
  const count = Math.min(Math.ceil((right - left) / wide - 1e-6), MOST)
  return Array.from({ length: Math.max(count, 0) }, (_, i) => start === 'right'
    ? { from: Math.max(right - (i + 1) * wide, left), to: right - i * wide }
    : { from: left + i * wide, to: Math.min(left + (i + 1) * wide, right) })
}

/** The lines between panels. @param {{from: number, to: number}[]} panels @param {string} start */
export function seams(panels, start) {
  return panels.slice(0, -1).map((one) => (start === 'right' ? one.from : one.to))
}

/**
 * Where each panel is held, as level pieces `[from, to, y]`.
 * @param {number[][][]} rings @param {{from: number, to: number}[]} panels @param {string | null} end `low` or `high`: the line follows that end of every panel
 * @param {number} far from the low end, where it follows none
 * @returns {[number, number, number][]}
 */
export function heldAt(rings, panels, end, far) {
  return panels.flatMap(({ from, to }) => {
    const pieces = chords(rings, (from + to) / 2)
    if (!pieces.length) return []
    const low = pieces[0][0], high = pieces[pieces.length - 1][1]
    return [/** @type {[number, number, number]} */ ([from, to, end === 'low' ? low : end === 'high' ? high : Math.min(low + far, high)])]
  })
}
