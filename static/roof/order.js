// Things of a record in an order people expect.

/** @param {Record<string, any>} things @param {string} by a member @returns {any[]} */
export function sorted(things, by) {
  return Object.values(things).sort((a, b) => String(a[by]).localeCompare(String(b[by]), undefined, { numeric: true }) || (a.id < b.id ? -1 : 1))
}

/** Stations as one walks them: by area, panel and distance from the low end. @param {any} record @param {(station: any) => boolean} wanted */
export function inWalkingOrder(record, wanted) {
  return Object.values(record.stations).filter(wanted).sort((/** @type {any} */ a, /** @type {any} */ b) =>
    (record.areas[a.area]?.name ?? '').localeCompare(record.areas[b.area]?.name ?? '') || a.panel - b.panel ||
    Number(a.from_low_end.value) - Number(b.from_low_end.value) || (a.id < b.id ? -1 : 1))
}

/** Findings as one walks to them; of an area what has no panel, then what concerns a walk as a whole last. @param {any} record @returns {any[]} */
export function findingsInOrder(record) {
  const last = (/** @type {any} */ one) => (one ? 0 : 1)
  const far = (/** @type {any} */ one) => Number(one.from_low_end?.value ?? 0)
  const name = (/** @type {any} */ one) => record.areas[one.area]?.name ?? ''
  const placed = Object.values(record.findings).map((/** @type {any} */ one) => ({ one, at: record.stations[one.station] ?? one }))
  return placed.sort((a, b) => last(a.at.area) - last(b.at.area) || name(a.at).localeCompare(name(b.at)) || last(a.at.panel) - last(b.at.panel)
    || (a.at.panel ?? 0) - (b.at.panel ?? 0) || far(a.at) - far(b.at) || (a.one.id < b.one.id ? -1 : 1)).map(({ one }) => one)
}
