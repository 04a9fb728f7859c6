// From what was tapped to the body of a walk's entry.

import { quantity, unitOf } from '../frame/amount.js'
import { likely } from '../checklist/applies.js'
import { sorted } from '../roof/order.js'

export const SKY = ['clear', 'clouds', 'wet']
export const WIND = ['calm', 'breeze', 'gusts']
export const BY = ['contact', 'infrared', 'estimate']

/**
 * How far a metal temperature may be off, by how it was had, in the job's unit: as the job states its instruments.
 * @param {any} job @param {string} by @returns {string} digits of a difference, '' where nobody says
 */
export function doubtOf(job, by) {
  const stated = job.instruments?.[by]?.uncertainty
  const heat = unitOf(job, 'heat')
  if (!stated) return ''
  if (stated.unit === 'd' + heat || (heat === 'C' && stated.unit === 'K')) return stated.value
  const exact = heat === 'C' ? Number(stated.value) * 5 / 9 : Number(stated.value) * 9 / 5
  return String(Math.ceil(exact)) // whole degrees, never less than stated
}

/** What the last walk's crew was is likely still so, and its areas if it went over the roof: a check of one area says
 * nothing of the next walk's. Temperature and weather never are.
 * @param {any} record @param {any[]} definitions that may be begun @param {any} person @param {any} old walk to correct, or null */
export function blankWalk(record, definitions, person, old) {
  const all = Object.values(record.walks).sort((/** @type {any} */ a, /** @type {any} */ b) => (a.at < b.at ? 1 : -1))
  const own = all.filter((/** @type {any} */ one) => one.by === person.id)
  const last = /** @type {any} */ (old ?? all[0])
  const areas = sorted(record.areas, 'name').map((one) => one.id)
  const over = /** @type {any} */ (old ?? all.find((/** @type {any} */ one) => definitions.some(({ digest, per }) => digest === one.definition && per !== 'area')))
  return {
    safe: 0, ground: old?.fall_protection === 'not_on_roof', definition: old?.definition ?? likely(definitions, own)?.digest ?? '',
    areas: (over?.areas ?? areas).filter((/** @type {string} */ id) => areas.includes(id)), crew: last?.crew ?? '', head_count: String(last?.head_count ?? 0),
    metal: old?.metal_temperature?.value ?? null, by: old?.metal_temperature_by ?? '', doubt: old?.metal_uncertainty?.value ?? '',
    sky: old?.weather.sky ?? '', wind: old?.weather.wind ?? '', placed: old?.placed ?? [],
    independent: old ? (old.independent ? 'yes' : 'no') : 'no',
  }
}

/**
 * What is still to be said, by its words' names; nothing when the walk can begin.
 * @param {any} draft @param {any} definition the chosen one
 */
export function missing(draft, definition) {
  const whole = definition?.per !== 'area'
  const areas = whole ? draft.areas.length > 0 : draft.areas.length === 1
  const open = /** @type {Record<string, boolean>} */ ({ which: !definition, areas: !areas, metal: whole && draft.metal === null,
    metal_by: whole && !draft.by, sky: !draft.sky, wind: !draft.wind })
  return Object.keys(open).filter((name) => open[name])
}

/** @param {any} draft @param {any} record @param {any} definition the chosen one @returns {any} the entry's body */
export function walkBody(draft, record, definition) {
  const heat = unitOf(record.job, 'heat')
  // What is asked of one area is read from papers, boxes and the deck: no metal is there to have a temperature.
  const metal = definition.per === 'area' ? {} : { metal_temperature: quantity(draft.metal, heat),
    metal_uncertainty: quantity(draft.doubt, 'd' + heat), metal_temperature_by: draft.by }
  return {
    definition: draft.definition, areas: draft.areas, crew: draft.crew.trim(),
    head_count: Number(draft.head_count) > 0 ? Math.round(Number(draft.head_count)) : undefined,
    weather: { sky: draft.sky, wind: draft.wind }, ...metal,
    placed: draft.placed.filter((/** @type {any} */ one) => draft.areas.includes(one.area)),
    fall_protection: draft.ground ? 'not_on_roof' : 'confirmed', independent: draft.independent === 'yes' ? true : undefined,
  }
}
