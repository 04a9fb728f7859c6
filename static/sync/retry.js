// When to try again: a delay list and pure predicates. Nothing here ever gives up.

/** Waits after the 1st, 2nd … failed round in a row, ms; the last repeats. Progress starts the list again. The longest
 * and one request that falls silent are less than a minute together: so soon a link that is back is found. */
export const DELAYS = [1000, 2000, 4000, 8000, 15_000, 20_000]

/** Waits before a refused item is offered again by itself, ms. */
export const REFUSED_DELAYS = [30_000, 120_000, 600_000, 3_600_000]

/**
 * @param {number} failures in a row, 1 or more @param {number[]} delays @param {number} random in [0, 1)
 * @returns {number} ms; between half and the whole of the listed wait, so that phones do not call in step
 */
export function waitFor(failures, delays, random) {
  const wait = delays[Math.min(failures, delays.length) - 1]
  return Math.round(wait / 2 + (wait / 2) * random)
}

/**
 * What a status says about the thing that was sent.
 * `done`, `again` (the link or the server's hour: nothing is wrong with the item), `sign` (the token: sign
 * again), `item` (the server has something against this very item).
 * @param {number} status @returns {'done' | 'again' | 'sign' | 'item'}
 */
export function outcome(status) {
  if (status >= 200 && status < 300) return 'done'
  if (status === 401 || status === 403) return 'sign'
  if ([400, 404, 409, 410, 413, 415, 422, 460].includes(status)) return 'item'
  return 'again'
}

/** May this row be sent now? @param {{state: string, next?: number}} row @param {number} now @param {boolean} asked by a person */
export function isDue(row, now, asked) {
  if (row.state === 'damaged') return false
  if (row.state === 'waiting' || asked) return true
  // A clock set back by years must not silence an item: no wait is longer than the longest of the list.
  const left = (row.next ?? 0) - now
  return left <= 0 || left > REFUSED_DELAYS[REFUSED_DELAYS.length - 1]
}
