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

/** Findings as one walks to them, what concerns a walk as a whole last. @param {any} record @returns {any[]} */
export function findingsInOrder(record) {
  const places = new Map(inWalkingOrder(record, () => true).map((one, at) => [one.id, at]))
  const at = (/** @type {any} */ one) => places.get(one.station) ?? places.size
  return Object.values(record.findings).sort((a, b) => at(a) - at(b) || (a.id < b.id ? -1 : 1))
}
