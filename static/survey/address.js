// The place a survey speaks of, as its screens' addresses carry it. Pure.

import { decimal } from '../frame/amount.js'

/** @typedef {{area: string, panel: number, from_low_end: {value: string, unit: string}, radius: {value: string, unit: string}}} Place */

/** @param {Place} place @returns {(string | number)[]} steps of an address */
export function stepsOf({ area, panel, from_low_end, radius }) {
  return [area, panel, from_low_end.value, from_low_end.unit, radius.value, radius.unit]
}

/** @param {any} record @param {string[]} steps @returns {Place | null} null for an address that names no place of this job */
export function placeIn(record, [area, panel, at, unit, radius, of]) {
  const [along, around] = [decimal(at ?? ''), decimal(radius ?? '')]
  if (!record.areas[area] || !/^[1-9]\d{0,5}$/.test(panel ?? '') || along === null || around === null || !unit || !of) return null
  return { area, panel: Number(panel), from_low_end: { value: along, unit }, radius: { value: around, unit: of } }
}
