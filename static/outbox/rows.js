// Rows of the outbox: what the server has not confirmed yet. Pure.
//
// state: `waiting`, `refused` (with the server's reason; kept, shown, offered again ever more seldom, or when a
// person says so), `held` (a revoked key's work, with the office for a decision), `damaged` (a photo's bytes are
// no longer what they were). A row goes only together with the arrival of a verified receipt.

/**
 * @param {{person: string, digest: string, job: string, token: string}} entry @param {any} payload
 * @param {{sha256: string, size: number, type: string}[]} photos kept on this phone, that the entry names
 * @returns {any[]}
 */
export function outboxRows(entry, payload, photos) {
  const common = { person: entry.person, job: entry.job, kind: payload.kind, subject: payload.subject, at: payload.at,
    state: 'waiting', refusal: null, failures: 0, next: 0 }
  const rows = [{ ...common, what: 'entry', name: entry.digest, size: entry.token.length, seq: payload.seq }]
  for (const photo of photos) {
    rows.push({ ...common, what: 'photo', name: photo.sha256, size: photo.size, seq: payload.seq,
      ...{ type: photo.type, upload: null } })
  }
  return rows
}

/** Order of sending: each chain from its start, so that the server meets few orphans. @param {any} a @param {any} b */
export function bySequence(a, b) {
  return a.job < b.job ? -1 : a.job > b.job ? 1 : a.seq - b.seq || (a.name < b.name ? -1 : 1)
}

/** Instant of an item's `at`; a clock that is wrong still compares. @param {{at: string}} row */
function instant(row) {
  return Date.parse(row.at)
}

/**
 * @param {any[]} rows
 * @returns {{entries: number, photos: number, oldest: string | null, refused: number, damaged: number, bytes: number}}
 */
export function countRows(rows) {
  const total = { entries: 0, photos: 0, oldest: /** @type {string | null} */ (null), refused: 0, damaged: 0, bytes: 0 }
  let first = Infinity
  for (const row of rows) {
    total[row.what === 'entry' ? 'entries' : 'photos'] += 1
    total.bytes += row.size
    if (row.state === 'refused') total.refused += 1
    if (row.state === 'damaged') total.damaged += 1
    if (instant(row) < first) {
      first = instant(row)
      total.oldest = row.at
    }
  }
  return total
}

/** Items of the manifest: everything unsent, whatever its state. @param {any[]} rows */
export function manifestOf(rows) {
  const items = rows.map(({ what, job, name, size, kind, at }) => ({ what, job, name, size, kind, at }))
  return { items, oldest: countRows(rows).oldest }
}
