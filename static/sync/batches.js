// How unsent entries are cut into requests. Pure.

const BATCH = 25

/** The first of the rows: at most 25 and so many bytes, but one whatever its size. @param {any[]} rows @param {number} most */
export function batch(rows, most) {
  let bytes = 0
  const end = rows.slice(0, BATCH).findIndex(({ size }) => (bytes += size) > most)
  return rows.slice(0, end < 0 ? BATCH : Math.max(1, end))
}
