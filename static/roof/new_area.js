// From what was typed to the body of an area's entry: a rectangle, eave below, ridge above.

import { quantity, unitOf } from '../frame/amount.js'

/** @param {any} record */
export function blankArea(record) {
  const first = /** @type {any} */ (Object.values(record.assemblies).sort((/** @type {any} */ a, /** @type {any} */ b) => (a.name < b.name ? -1 : 1))[0])
  const metric = record.job?.units === 'SI'
  return {
    name: '', assembly: first?.id ?? '', width: metric ? '10' : '40', length: metric ? '9' : '30', slope: '4', start: 'left',
    coverage: first?.coverage.value ?? (metric ? '400' : '16'), coverage_unit: first?.coverage.unit ?? (metric ? 'mm' : 'in'),
    fixed: 'unknown', fixed_at: '0', fixed_by: '',
  }
}

/** Whether every number is one: a mistyped one is null, and no part of it is a roof. @param {any} draft as `blankArea` */
export function wholeArea(draft) {
  const asked = ['width', 'length', 'slope', 'coverage', ...(draft.fixed === 'between' ? ['fixed_at'] : [])]
  return asked.every((name) => draft[name] !== null)
}

/** @param {any} draft as `blankArea` @param {any} record @returns {any} */
export function areaBody(draft, record) {
  const unit = unitOf(record.job, 'far')
  const at = { eave: '0', ridge: draft.length, between: draft.fixed_at }[/** @type {string} */ (draft.fixed)]
  const zones = (record.assemblies[draft.assembly]?.zones ?? []).map((/** @type {any} */ zone) => zone.name)
  return {
    name: draft.name.trim(), assembly: draft.assembly, slope: quantity(draft.slope, '/12'),
    outline: { unit, points: [['0', '0'], [draft.width, '0'], [draft.width, draft.length], ['0', draft.length]] },
    edges: ['eave', 'rake', 'ridge', 'rake'], start: draft.start, coverage: quantity(draft.coverage, draft.coverage_unit),
    fixed_line: at === undefined ? null : { from_low_end: quantity(at, unit), by: draft.fixed_by.trim() },
    zones,
  }
}
