// One area's edge laid against another's on the plan, as the two meet at a hip, a valley or a ridge. Pure.

import { toPlan } from '../roof/placing.js'
import { turning } from './outline.js'

/**
 * @param {{points: number[][], cos: number, metre: number}} own @param {number} i its edge
 * @param {{place: any, points: number[][]}} other @param {number} j its edge @param {'from' | 'middle' | 'to'} flush which end of the other's edge they share
 * @returns {{east: number, north: number, up: number, differ: number}} place in metres and degrees; `differ`: how much longer its own edge looks
 */
export function against({ points, cos, metre }, i, other, j, flush) {
  const flat = { east: 0, north: 0, up: 0, cos, metre, told: true }
  const mine = ends(points, i, (x, y) => toPlan(flat, x, y))
  const theirs = ends(other.points, j, (x, y) => toPlan(other.place, x, y))
  // Two roofs on the two sides of a line run along it in opposite senses, if both outlines turn the same way.
  const same = turning(points) * turning(other.points) > 0
  const [a, b] = same ? [mine[1], mine[0]] : mine
  const up = degrees(angle(a, b) - angle(theirs[0], theirs[1]))
  const turned = { ...flat, up }
  const [[ax, ay], [bx, by]] = (same ? [(i + 1) % points.length, i] : [i, (i + 1) % points.length]).map((k) => toPlan(turned, points[k][0], points[k][1]))
  const share = { from: 0, middle: 0.5, to: 1 }[flush]
  const at = (/** @type {number} */ p, /** @type {number} */ q) => p + (q - p) * share
  return {
    east: at(theirs[0][0], theirs[1][0]) - at(ax, bx), north: at(theirs[0][1], theirs[1][1]) - at(ay, by), up,
    differ: Math.hypot(bx - ax, by - ay) - Math.hypot(theirs[1][0] - theirs[0][0], theirs[1][1] - theirs[0][1]),
  }
}

/** @param {number[][]} points @param {number} i @param {(x: number, y: number) => [number, number]} seen */
function ends(points, i, seen) {
  return [points[i], points[(i + 1) % points.length]].map(([x, y]) => seen(x, y))
}

/** @param {number[]} a @param {number[]} b */
function angle(a, b) {
  return (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI
}

/** @param {number} value */
function degrees(value) {
  const turned = ((value % 360) + 360) % 360
  return Math.round(turned * 1e4) / 1e4 % 360
}
