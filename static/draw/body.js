// Between a drawing in the making and an area's entry. Pure.

import { quantity, unitOf } from '../frame/amount.js'
import { begin } from './forms.js'
import { box, numbers, text } from './outline.js'

/** What the fold adds to an area's body; everything else, known to this build or not, is said again as it was. */
const FOLDED = ['id', 'digest', 'by', 'at', 'clock', 'heads', 'panel_length', 'panel_count', 'run']

/** A new drawing: a rectangle, as most areas are. @param {any} record @param {string} id */
export function blank(record, id) {
  const metric = record.job?.units === 'SI'
  const first = Object.values(record.assemblies).sort((/** @type {any} */ a, /** @type {any} */ b) => (a.name < b.name ? -1 : 1))[0]
  return {
    id, heads: [], name: '', assembly: /** @type {any} */ (first)?.id ?? '', unit: unitOf(record.job, 'far'), ...begin('rectangle', metric),
    slope: '4', slope_unit: '/12', start: 'left', ...covered(/** @type {any} */ (first), metric), fixed: 'unknown', fixed_at: '0', fixed_by: '', fixed_fasteners: '',
    openings: [], zone_state: '', zone_by: '', zone_standard: '', zone_basis: '', zone_widths: {}, zone_drawn: [], place: null, past: [], future: [], tag: '',
  }
}

/** @param {any} assembly @param {boolean} metric */
export function covered(assembly, metric) {
  return { coverage: assembly?.coverage.value ?? (metric ? '400' : '16'), coverage_unit: assembly?.coverage.unit ?? (metric ? 'mm' : 'in') }
}

/** The drawing of an area that stands in the record. @param {any} record @param {any} area */
export function drawingOf(record, area) {
  const metric = record.job?.units === 'SI'
  const line = area.fixed_line
  const map = area.zone_map
  const points = area.outline.points
  const fixed = !line ? 'unknown' : line.end === 'low' || Number(line.from_low_end.value) === 0 ? 'eave'
    : line.end === 'high' || Number(line.from_low_end.value) === box(numbers(points)).height ? 'ridge' : 'between'
  return {
    ...blank(record, area.id), heads: area.heads, name: area.name, assembly: area.assembly, unit: area.outline.unit, form: 'free', points,
    edges: points.map((/** @type {any} */ _, /** @type {number} */ i) => area.edges?.[i] ?? null), lengths: points.map((/** @type {any} */ _, /** @type {number} */ i) => area.outline.lengths?.[i] ?? null),
    slope: area.slope.value, slope_unit: area.slope.unit, start: area.start ?? 'left',
    ...covered(record.assemblies[area.assembly], metric), ...(area.coverage ? { coverage: area.coverage.value, coverage_unit: area.coverage.unit } : {}),
    fixed, fixed_at: line?.from_low_end.value ?? '0', fixed_by: line?.by ?? '', fixed_fasteners: line?.fasteners ? String(line.fasteners) : '',
    openings: (area.openings ?? []).map((/** @type {any} */ one) => ({ name: one.name, points: one.outline.points })),
    zone_state: map?.state ?? '', zone_by: map?.by ?? '', zone_standard: map?.standard ?? '', zone_basis: map?.basis ?? '',
    zone_widths: Object.fromEntries(Object.entries(map?.widths ?? {}).map(([kind, width]) => [kind, /** @type {any} */ (width).value])),
    zone_drawn: (map?.drawn ?? []).map((/** @type {any} */ one) => ({ zone: one.zone, points: one.outline.points })),
    place: area.place ? { east: area.place.east, north: area.place.north, up: area.place.up } : null,
  }
}

/** Whether every number is one: a mistyped one is null or '', and no part of it is a roof. @param {any} draft */
export function whole(draft) {
  const asked = ['slope', 'coverage', ...(draft.fixed === 'between' ? ['fixed_at'] : [])].map((name) => draft[name])
  const widths = Object.values(draft.zone_widths)
  const place = draft.place ? Object.values(draft.place) : []
  return draft.points.length > 2 && !draft.lengths.includes('') && [...asked, ...widths, ...place].every((one) => one !== null)
}

/** @param {any} draft @param {any} record @returns {any} an area's body */
export function areaBody(draft, record) {
  const was = record.areas[draft.id] ?? {}
  const kept = Object.fromEntries(Object.entries(was).filter(([name]) => !FOLDED.includes(name)))
  const { unit } = draft
  const outline = (/** @type {any} */ points) => ({ unit, points })
  const zones = (record.assemblies[draft.assembly]?.zones ?? []).map((/** @type {any} */ zone) => zone.name)
  return {
    ...kept, name: draft.name.trim(), assembly: draft.assembly, slope: quantity(draft.slope, draft.slope_unit), outline: { ...outline(draft.points), ...(draft.lengths.some(Boolean) ? { lengths: draft.lengths } : {}) },
    edges: draft.edges, start: draft.start, coverage: quantity(draft.coverage, draft.coverage_unit), fixed_line: fixedLine(draft),
    zones: was.assembly === draft.assembly && was.zones ? was.zones : zones,
    openings: draft.openings.length ? draft.openings.map((/** @type {any} */ one) => ({ name: one.name, outline: outline(one.points) })) : undefined,
    place: draft.place ? { unit, ...draft.place } : undefined, zone_map: zoneMap(draft, outline, was.zone_map),
  }
}

/** The line at the low or the high end follows that end of every panel. @param {any} draft */
function fixedLine(draft) {
  if (draft.fixed === 'unknown') return null
  const at = { eave: '0', ridge: text(box(numbers(draft.points)).height), between: draft.fixed_at }[/** @type {string} */ (draft.fixed)]
  const end = { eave: 'low', ridge: 'high' }[/** @type {string} */ (draft.fixed)]
  return { from_low_end: quantity(at, draft.unit), by: draft.fixed_by.trim(), ...(draft.fixed_fasteners ? { fasteners: Number(draft.fixed_fasteners) } : {}), ...(end ? { end } : {}) }
}

/** @param {any} draft @param {(points: any) => any} outline @param {any} was */
function zoneMap(draft, outline, was) {
  if (!draft.zone_state) return undefined
  const widths = Object.fromEntries(Object.entries(draft.zone_widths).filter(([, one]) => Number(one) > 0).map(([kind, one]) => [kind, quantity(String(one), draft.unit)]))
  return {
    ...(was ?? {}), state: draft.zone_state, by: draft.zone_by.trim(), standard: draft.zone_standard.trim(), basis: draft.zone_basis || undefined, widths,
    drawn: draft.zone_drawn.map((/** @type {any} */ one) => ({ zone: one.zone, outline: outline(one.points) })),
  }
}
