// An outline while it is drawn: corners in decimal text, x along the eave and y up the slope, true lengths. Pure.
// Corners are what a person says; everything counted from them is the rulebook's.

import { step } from '../frame/amount.js'

export const KINDS = ['eave', 'ridge', 'rake', 'hip', 'valley', 'wall', 'penetration']

/** @typedef {[string, string][]} Ring corners, edge i from corner i to the next */

/** A number as a corner or a length is kept: six decimals at most, no more digits than it needs. @param {number} value */
export function text(value) {
  return step(value.toFixed(6), 0)
}

/** @param {Ring} ring @returns {number[][]} */
export function numbers(ring) {
  return ring.map(([x, y]) => [Number(x), Number(y)])
}

/** @param {number[][]} points @returns {Ring} */
export function ring(points) {
  return points.map(([x, y]) => [text(x), text(y)])
}

/** Length of edge `i`, for the eye. @param {Ring} points @param {number} i */
export function long(points, i) {
  const [ax, ay] = points[i], [bx, by] = points[(i + 1) % points.length]
  return Math.hypot(Number(bx) - Number(ax), Number(by) - Number(ay))
}

/** @param {number[][]} points */
export function box(points) {
  const xs = points.map((one) => one[0]), ys = points.map((one) => one[1])
  const [left, low] = [Math.min(...xs), Math.min(...ys)]
  return { left, low, width: Math.max(...xs) - left, height: Math.max(...ys) - low }
}

/** Twice the area, positive counterclockwise. @param {number[][]} points */
export function turning(points) {
  return points.reduce((sum, [ax, ay], i) => {
    const [bx, by] = points[(i + 1) % points.length]
    return sum + ax * by - bx * ay
  }, 0)
}

/**
 * One more corner in the middle of edge `i`; both halves keep its name, neither its typed length.
 * @param {{points: Ring, edges: (string | null)[], lengths: (string | null)[]}} drawn @param {number} i
 */
export function split({ points, edges, lengths }, i) {
  const [ax, ay] = points[i].map(Number), [bx, by] = points[(i + 1) % points.length].map(Number)
  const between = ring([[(ax + bx) / 2, (ay + by) / 2]])[0]
  return { points: put(points, i + 1, between), edges: put(edges, i + 1, edges[i]), lengths: put(lengths.map((one, at) => (at === i ? null : one)), i + 1, null) }
}

/** Without corner `i`: the edge before it goes on to the corner after. @param {{points: Ring, edges: any[], lengths: any[]}} drawn @param {number} i */
export function without({ points, edges, lengths }, i) {
  const before = (i + points.length - 1) % points.length
  const rest = (/** @type {any[]} */ list) => list.filter((_, at) => at !== i)
  return { points: rest(points), edges: rest(edges), lengths: rest(lengths.map((one, at) => (at === before ? null : one))) }
}

/** Corner `i` at another place: the lengths of its two edges are no longer as typed. @param {{points: Ring, lengths: any[]}} drawn @param {number} i @param {[string, string]} at */
export function moved({ points, lengths }, i, at) {
  const before = (i + points.length - 1) % points.length
  return { points: points.map((one, j) => (j === i ? at : one)), lengths: lengths.map((one, j) => (j === i || j === before ? null : one)) }
}

/** Turned over so that up-slope is the other way; each edge keeps its name and length. @param {Ring[]} rings @returns {(points: Ring) => Ring} */
export function over(rings) {
  const { low, height } = box(numbers(rings[0]))
  return (points) => ring(numbers(points).map(([x, y]) => [x, 2 * low + height - y]))
}

/** @param {any[]} list @param {number} at @param {any} one */
function put(list, at, one) {
  return [...list.slice(0, at), one, ...list.slice(at)]
}
