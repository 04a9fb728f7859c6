// The panels an audit is drawn over: those that stand, covered or open, area by area. Pure.

import { stretches } from '../roof/placed.js'

/**
 * @param {any} record @param {string[]} areas ids @param {Record<string, {from: number, to: number}>} parts by area: only panels of this part
 * @returns {{area: string, from: number, to: number}[]} by area id, then panel
 */
export function population(record, areas, parts) {
  return [...areas].sort().flatMap((area) => stretches(record.coverage?.[area]).flatMap(({ from, to }) => {
    const row = { area, from: Math.max(from, parts[area]?.from ?? from), to: Math.min(to, parts[area]?.to ?? to) }
    return row.from <= row.to ? [row] : []
  }))
}

/** @param {{from: number, to: number}[]} rows */
export function size(rows) {
  return rows.reduce((sum, { from, to }) => sum + to - from + 1, 0)
}
