// From what was tapped to the body of a walk's entry.

import { quantity, unitOf } from '../frame/amount.js'
import { sorted } from '../roof/order.js'

export const SKY = ['clear', 'clouds', 'wet']
export const WIND = ['calm', 'breeze', 'gusts']
export const BY = ['contact', 'infrared', 'estimate']

/** Our defaults for how far a metal temperature may be off, by how it was had; no published source. */
const DOUBT = /** @type {Record<string, Record<string, string>>} */ ({
  contact: { F: '4', C: '2' }, infrared: { F: '10', C: '5' }, estimate: { F: '20', C: '10' },
})

/** @param {string} by @param {string} heat `F` or `C` */
export function doubtOf(by, heat) {
  return DOUBT[by]?.[heat] ?? ''
}

/** What the last walk's crew and areas were is likely still so; temperature and weather never are.
 * @param {any} record @param {any[]} definitions that may be begun @param {any} old walk to correct, or null */
export function blankWalk(record, definitions, old) {
  const all = Object.values(record.walks).sort((/** @type {any} */ a, /** @type {any} */ b) => (a.at < b.at ? 1 : -1))
  const last = /** @type {any} */ (old ?? all[0])
  const areas = sorted(record.areas, 'name').map((one) => one.id)
  return {
    safe: 0, definition: old?.definition ?? definitions[0]?.digest ?? '',
    areas: (last?.areas ?? areas).filter((/** @type {string} */ id) => areas.includes(id)), crew: last?.crew ?? '', head_count: String(last?.head_count ?? 0),
    metal: old?.metal_temperature.value ?? null, by: old?.metal_temperature_by ?? '', doubt: old?.metal_uncertainty.value ?? '',
    sky: old?.weather.sky ?? '', wind: old?.weather.wind ?? '', placed: old?.placed ?? [],
    independent: old ? (old.independent ? 'yes' : 'no') : 'no',
  }
}

/** @param {any} draft */
export function ready(draft) {
  return Boolean(draft.definition && draft.areas.length && draft.metal !== null && draft.by && draft.sky && draft.wind)
}

/** @param {any} draft @param {any} record @returns {any} the entry's body */
export function walkBody(draft, record) {
  const heat = unitOf(record.job, 'heat')
  return {
    definition: draft.definition, areas: draft.areas, crew: draft.crew.trim(),
    head_count: Number(draft.head_count) > 0 ? Math.round(Number(draft.head_count)) : undefined,
    weather: { sky: draft.sky, wind: draft.wind }, metal_temperature: quantity(draft.metal, heat),
    metal_uncertainty: quantity(draft.doubt, 'd' + heat), metal_temperature_by: draft.by,
    placed: draft.placed.filter((/** @type {any} */ one) => draft.areas.includes(one.area)),
    fall_protection: 'confirmed', independent: draft.independent === 'yes' ? true : undefined,
  }
}
