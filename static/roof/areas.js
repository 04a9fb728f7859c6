// What a plan draws of each area, worked out once: outline, seams, edges by kind and fixed line, in metres from above.

import { drawn } from '../frame/amount.js'
import { chords, ribs, rims } from './chords.js'
import { heldAt, seams, strips } from './strips.js'
import { laidOut, toPlan } from './placing.js'

/** @typedef {{area: any, place: any, rings: number[][][], box: number[], panels: {from: number, to: number}[], wide: number | null, low: number, high: number,
 *   rim: string, ribs: string, held: string, edges: Record<string, string>}} Shape */

/** @type {Map<string, any>} */
const known = new Map()

/** @param {any} record @param {any[]} areas @returns {Shape[]} */
export function shapes(record, areas) {
  return laidOut(areas).map((one) => {
    const key = [one.area.digest, one.area.assembly, one.place.east, one.place.north, one.place.up].join('/')
    const found = known.get(key) ?? shape(record, one)
    known.set(key, found)
    return found
  })
}

/** @param {any} record @param {any} one of `laidOut` @returns {Shape} */
function shape(record, one) {
  const { area, place, rings } = one
  const at = (/** @type {number} */ x, /** @type {number} */ y) => toPlan(place, x, y)
  const wide = drawn(area.coverage ?? record.assemblies[area.assembly]?.coverage, area.outline.unit)
  const panels = strips(rings[0], wide ?? 0, area.start)
  const line = area.fixed_line
  const held = line ? heldAt(rings, panels, line.end ?? null, drawn(line.from_low_end, area.outline.unit) ?? 0) : []
  const ys = rings[0].map((/** @type {number[]} */ point) => point[1])
  return {
    ...one, wide, panels, low: Math.min(...ys), high: Math.max(...ys), rim: rims(rings, at), ribs: ribs(rings, seams(panels, area.start), at), edges: edges(one),
    held: held.map(([from, to, y]) => `M${at(from, y).map(short).join(' ')}L${at(to, y).map(short).join(' ')}`).join(''),
  }
}

/** One path for all edges of a kind. @param {any} one */
function edges({ area, place, rings }) {
  /** @type {Record<string, string>} */
  const paths = {}
  rings.forEach((/** @type {number[][]} */ ring, /** @type {number} */ k) => ring.forEach((from, i) => {
    const kind = k ? 'penetration' : area.edges?.[i] ?? 'none'
    const [a, b] = [from, ring[(i + 1) % ring.length]].map(([x, y]) => toPlan(place, x, y).map(short).join(' '))
    paths[kind] = `${paths[kind] ?? ''}M${a}L${b}`
  }))
  return paths
}

/** A piece of strips from panel to panel, as one closed path. @param {Shape} shape @param {number} from @param {number} to panels @param {number} low @param {number} high */
export function band({ panels, place }, from, to, low, high) {
  const ends = [panels[from - 1], panels[Math.min(to, panels.length) - 1]]
  if (!ends[0] || !ends[1]) return ''
  const left = Math.min(ends[0].from, ends[1].from), right = Math.max(ends[0].to, ends[1].to)
  return 'M' + [[left, low], [right, low], [right, high], [left, high]].map(([x, y]) => toPlan(place, x, y).map(short).join(' ')).join('L') + 'Z'
}

/** The panel and the distance from its low end at a point of the plan; null off the roof. @param {Shape} shape @param {number} x @param {number} y in the area's own plane */
export function placeAt({ panels, rings, area }, x, y) {
  const n = panels.findIndex((one) => x >= one.from && x <= one.to) + 1
  if (!n || !chords(rings.slice(0, 1), x).some(([low, high]) => y >= low && y <= high)) return null
  return { panel: n, far: Math.max(y - lowEnd({ panels, rings, area }, n), 0) }
}

/** The low end of a panel's seam; of the last one, which has none, that of its middle. @param {{panels: any[], rings: number[][][], area: any}} shape @param {number} n */
export function lowEnd({ panels, rings, area }, n) {
  const x = seamOf({ panels, area }, n)
  const found = chords(rings, x)
  return found.length ? found[0][0] : chords(rings, (panels[n - 1].from + panels[n - 1].to) / 2)[0]?.[0] ?? 0
}

/** x of a panel's leading side, a little within it. @param {{panels: any[], area: any}} shape @param {number} n */
export function seamOf({ panels, area }, n) {
  const { from, to } = panels[n - 1]
  if (n === panels.length) return (from + to) / 2
  return area.start === 'right' ? from + (to - from) * 1e-6 : to - (to - from) * 1e-6
}

/** @param {number} value */
function short(value) {
  return Math.round(value * 1000) / 1000
}
