// How unsent entries are cut into requests. Pure.

const BATCH = 25
const BATCH_BYTES = 256 * 1024 // small enough for a few seconds of poor signal

/** @param {any[]} rows @returns {any[][]} at most 25 entries and 256 KiB each, or one larger entry */
export function batches(rows) {
  /** @type {any[][]} */
  const all = []
  let bytes = Infinity
  for (const row of rows) {
    if (bytes + row.size > BATCH_BYTES || (all.at(-1)?.length ?? 0) >= BATCH) {
      all.push([])
      bytes = 0
    }
    all[all.length - 1].push(row)
    bytes += row.size
  }
  return all
}
