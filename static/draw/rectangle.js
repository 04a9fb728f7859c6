// A ring as a rectangle, level and plumb: where it begins and how large it is. Pure.

import { text } from './outline.js'

/** @param {string} x @param {string} y @param {string} w @param {string} h @returns {[string, string][]} */
export function rectangle(x, y, w, h) {
  const [right, top] = [text(Number(x) + Number(w)), text(Number(y) + Number(h))]
  return [[x, y], [right, y], [right, top], [x, top]]
}

/** @param {[string, string][]} points @returns {{x: string, y: string, w: string, h: string} | null} null for another shape */
export function sidesOf(points) {
  if (points.length !== 4) return null
  const [[ax, ay], [bx, by], [cx, cy], [dx, dy]] = points
  if (ay !== by || bx !== cx || cy !== dy || dx !== ax) return null
  return { x: ax, y: ay, w: text(Number(bx) - Number(ax)), h: text(Number(cy) - Number(by)) }
}
