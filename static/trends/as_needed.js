// The record as far as trends read it. The way to the rulebook is a text, which a phone writes and reads slowly: half of
// a record is readings, workings and photographs' particulars. `tests/micropython/` holds the figures to the whole record's.

const NEVER = { layouts: {}, coverage: {}, chains: {}, fits: {}, flags: [], doubts: [], days: [] }
const MEMBERS = /** @type {Record<string, string[]>} */ ({
  answers: ['id', 'digest', 'by', 'at', 'result', 'severity', 'station', 'walk', 'area', 'item', 'definition'],
  stations: ['id', 'at', 'area', 'panel', 'zone', 'lot', 'reached', 'walk'],
  photos: ['at'], marks: ['at'], stops: ['at'], releases: ['at'],
})

/** @param {any} record @returns {any} */
export function asFarAsNeeded(record) {
  const own = Object.entries(MEMBERS).map(([kind, names]) => [kind, Object.fromEntries(Object.entries(record[kind])
    .map(([id, thing]) => [id, Object.fromEntries(names.filter((name) => name in thing).map((name) => [name, thing[name]]))]))])
  return { ...record, ...NEVER, ...Object.fromEntries(own) }
}
