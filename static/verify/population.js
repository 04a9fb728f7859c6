// The panels that a lot is drawn from, in canonical order: the twin of inspect_app/record/population.py.

import { digestOf } from '../entry/digest.js'

/** @typedef {[area: string, from: number, to: number]} Row */

const MOST = 20000

/** @param {any} population @returns {Row[] | null} null for rows that are no population */
export function rowsOf(population) {
  /** @type {Row[]} */
  const rows = []
  for (const row of Array.isArray(population) ? population : []) {
    const { area, from, to } = row ?? {}
    if (typeof area !== 'string' || !Number.isInteger(from) || !Number.isInteger(to) || from < 1 || to < from) return null
    rows.push([area, from, to])
  }
  rows.sort((a, b) => (a[0] === b[0] ? a[1] - b[1] || a[2] - b[2] : a[0] < b[0] ? -1 : 1))
  const twice = rows.some(([area, from], at) => at > 0 && area === rows[at - 1][0] && from <= rows[at - 1][2])
  return rows.length && !twice && sizeOf(rows) <= MOST ? rows : null
}

/** @param {Row[]} rows */
export const sizeOf = (rows) => rows.reduce((size, [, from, to]) => size + to - from + 1, 0)

/** The area and panel of a place in the population, from 0. @param {Row[]} rows @param {number} index */
export function member(rows, index) {
  let left = index
  for (const [area, from, to] of rows) {
    if (left <= to - from) return { area, panel: from + left }
    left -= to - from + 1
  }
  throw new RangeError('beyond the population')
}

/** @param {Row[]} rows */
export async function digestOfRows(rows) {
  let text = ''
  for (const [area, from, to] of rows) for (let panel = from; panel <= to; panel += 1) text += `${area} ${panel}\n`
  return digestOf(text)
}

// Millimetres, exact by definition (international yard, 1959).
const UNITS = new Map([['in', 25.4], ['ft', 304.8], ['mm', 1], ['cm', 10], ['m', 1000]])

/**
 * Panels across an area, the last one ripped: its width along the eave over the coverage, rounded up; null where either
 * is not told. The twin of `panel_count` in inspect_app/record/area.py.
 * @param {Record<string, any>} area @param {Record<string, any>} assembly bodies of their entries
 */
export function panelCount(area, assembly) {
  const { value, unit } = area.coverage ?? assembly.coverage
  const across = area.outline.points.map((/** @type {string[]} */ point) => Number(point[0]))
  const module = Number(value) * (UNITS.get(unit) ?? NaN) / (UNITS.get(area.outline.unit) ?? NaN)
  const width = Math.max(...across) - Math.min(...across)
  return module > 0 && width / module < 1e6 ? Math.ceil(width / module - 1e-6) : null
}
