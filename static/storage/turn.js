// Some browsers keep the store as a log, and after a start go on writing where the log ended. Where the power went or the
// disk was full in the middle of a record, its torn end then lies in the middle of the log: the next start but one takes
// the whole store for damaged and throws it away, with all that was shown as saved since (seen in Chromium:
// tests/browser/test_torn.py, test_full_disk.py). So more is written than one log holds: the browser then begins a new
// one, puts what the old one says into tables, and drops it with its torn end.

import { dropBallast, layBallast } from './ballast.js'
import { withDb } from './database.js'
import { noteFull } from './room.js'
import { noteStorage } from './standing.js'

const LEAF = 32 * 1024 // bytes; from 64 KiB on a value would lie in a file of its own, beside the log
const LEAVES = 160 // 5 MiB: a log holds 4
const WAITS = [1000, 2000, 5000, 15_000, 60_000] // ms until the next try; the last one again and again
const LAY_BALLAST = 20_000

const FAILED = new Set(['outbox.disk_full', 'outbox.storage_stopped'])

let wanted = 0
/** @type {Promise<void> | null} */
let turning = null

/** Turn the log of the last start over, and again after each write that failed: once per page. */
export function startTurning() {
  if (!keepsLog()) return
  addEventListener('seamwalk:torn', () => {
    wanted += 1
    turning ??= turned(dropBallast).finally(() => { turning = null })
  })
  turning ??= turned(async () => {}).finally(() => { turning = null })
}

/** Only browsers with this word in their name keep such a log; the others would write for nothing. */
function keepsLog() {
  return /Chrom(e|ium)\//.test(navigator.userAgent)
}

/**
 * Where it does not go at once the ballast gives room; where it does not go then either, the screen asks to stay.
 * @param {() => Promise<void>} first
 */
async function turned(first) {
  await first().catch(() => {})
  for (let tries = 0, since = -1; since !== wanted;) {
    since = wanted
    const fault = await turn().then(() => null, (reason) => reason)
    if (!fault) continue
    since = -1
    await dropBallast().catch(() => {})
    if (tries && FAILED.has(fault.code)) noteStorage('log', 'storage.torn')
    if (tries) await new Promise((resolve) => setTimeout(resolve, WAITS[Math.min(tries, WAITS.length) - 1]))
    tries += 1
  }
  noteStorage('log', null)
  if (!wanted) return
  await noteFull(true).catch(() => {}) // if it was not for want of room, the next photo finds the ballast's and says so
  setTimeout(() => layBallast().catch(() => {}), LAY_BALLAST)
}

/** Write more than a log holds, below the ballast's keys, and take it away again. */
async function turn() {
  await withDb(['ballast'], 'readwrite', (tx) => Promise.all(leaves().map((leaf, n) => tx.store.put(leaf, -1 - n))), { relaxed: true })
  await withDb(['ballast'], 'readwrite', (tx) => tx.store.delete(IDBKeyRange.bound(-LEAVES, -1)), { relaxed: true })
}

/** Random, because the store under the browser compresses. */
function leaves() {
  return Array.from({ length: LEAVES }, () => crypto.getRandomValues(new Uint8Array(LEAF)))
}
