// Areas on the roof plan, seen from above with north up: east and north in metres. Pure, for the eye only.

import { METRES } from '../frame/amount.js'

/** How much shorter an up-slope length looks from above. @param {any} slope a quantity */
export function cosine(slope) {
  const value = Number(slope?.value)
  if (!Number.isFinite(value)) return 1
  if (slope.unit === 'deg') return Math.cos((value * Math.PI) / 180)
  return 1 / Math.hypot(1, slope.unit === '%' ? value / 100 : value / 12)
}

/**
 * @typedef {{east: number, north: number, up: number, cos: number, metre: number, told: boolean}} Place
 *   origin in metres, bearing of up-slope in degrees, metres to one of the outline's unit; `told`: somebody placed it
 */

/** From the outline's own plane to the plan. @param {Place} place @param {number} x @param {number} y @returns {[number, number]} */
export function toPlan({ east, north, up, cos, metre }, x, y) {
  const b = (up * Math.PI) / 180, across = x * metre, along = y * cos * metre
  return [east + across * Math.cos(b) + along * Math.sin(b), north - across * Math.sin(b) + along * Math.cos(b)]
}

/** And back. @param {Place} place @param {number} east @param {number} north @returns {[number, number]} */
export function toArea({ east: e, north: n, up, cos, metre }, east, north) {
  const b = (up * Math.PI) / 180, de = east - e, dn = north - n
  return [(de * Math.cos(b) - dn * Math.sin(b)) / metre, (de * Math.sin(b) + dn * Math.cos(b)) / (cos * metre)]
}

/** @param {any} area @returns {number[][][]} its outline, then its openings */
export function ringsOf(area) {
  const read = (/** @type {any} */ outline) => outline.points.map((/** @type {string[]} */ point) => point.map(Number))
  return [read(area.outline), ...(area.openings ?? []).map((/** @type {any} */ one) => read(one.outline))]
}

/** @param {any} area @returns {Place | null} */
export function placeOf(area) {
  const { east, north, up, unit = area.outline.unit } = area.place ?? {}
  const metre = METRES[area.outline.unit] ?? 1
  const cos = cosine(area.slope)
  const [e, n, b] = [east, north, up].map(Number)
  return [e, n, b].every(Number.isFinite) ? { east: e * (METRES[unit] ?? 1), north: n * (METRES[unit] ?? 1), up: b, cos, metre, told: true } : null
}

/**
 * Every area's place; those that nobody placed stand in a row of their own below the others, up-slope to the top.
 * @param {any[]} areas @returns {{area: any, place: Place, rings: number[][][], box: number[]}[]} `box`: west, south, east, north
 */
export function laidOut(areas) {
  const shown = areas.map((area) => ({ area, rings: ringsOf(area), place: placeOf(area) }))
  const told = shown.filter((one) => one.place).map((one) => bounds(/** @type {any} */ (one.place), one.rings[0]))
  const west = told.length ? Math.min(...told.map((box) => box[0])) : 0
  const wide = told.length ? Math.max(...told.map((box) => box[2])) - west : 0
  let [x, top, tall] = [west, told.length ? Math.min(...told.map((box) => box[1])) : 0, 0]
  const all = shown.filter((one) => !one.place).map((one) => bounds(bare(one.area), one.rings[0]))
  const gap = all.length ? Math.max(...all.map((box) => box[3] - box[1])) * 0.15 : 0
  const most = Math.max(wide, Math.sqrt(all.reduce((sum, box) => sum + (box[2] - box[0] + gap) * (box[3] - box[1] + gap), 0)) * 1.3)
  if (told.length) top -= 2 * gap
  return shown.map(({ area, rings, place }) => {
    if (!place) {
      const free = bare(area)
      const box = bounds(free, rings[0])
      if (x > west && x + box[2] - box[0] > west + most) { x = west; top -= tall + gap; tall = 0 }
      place = { ...free, east: x - box[0], north: top - box[3] }
      x += box[2] - box[0] + gap
      tall = Math.max(tall, box[3] - box[1])
    }
    return { area, rings, place, box: bounds(place, rings[0]) }
  })
}

/** @param {any} area @returns {Place} */
function bare(area) {
  return { east: 0, north: 0, up: 0, cos: cosine(area.slope), metre: METRES[area.outline.unit] ?? 1, told: false }
}

/** @param {Place} place @param {number[][]} points @returns {number[]} west, south, east, north */
export function bounds(place, points) {
  const seen = points.map(([x, y]) => toPlan(place, x, y))
  const [e, n] = [0, 1].map((axis) => seen.map((one) => one[axis]))
  return [Math.min(...e), Math.min(...n), Math.max(...e), Math.max(...n)]
}
