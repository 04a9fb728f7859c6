// Some browsers keep the store as a log, and after a start go on writing where the log ended. Where the power went or the
// disk was full in the middle of a record, its torn end then lies in the middle of the log: the next start but one takes
// the whole store for damaged and throws it away, with all that was shown as saved since (seen in Chromium:
// tests/browser/test_torn.py, test_full_disk.py). So more is written than one log holds: the browser then begins a new
// one, puts what the old one says into tables, and drops it with its torn end.

import { dropBallast, layBallast } from './ballast.js'
import { withDb } from './database.js'
import { keepsLog, seeRoom } from './reserve.js'
import { noteFull } from './room.js'
import { noteStorage } from './standing.js'

const LEAF = 32 * 1024 // bytes; from 64 KiB on a value would lie in a file of its own, beside the log
const LEAVES = 160 // 5 MiB: a log holds 4
const AT_ONCE = 8 // leaves: what else is to be written waits no longer than for so much
const WAITS = [0, 0, 1000, 2000, 5000, 15_000, 60_000] // ms before a turn, by how many failed before it
const MOST = 20 // turns within QUIET that wait for nothing: a store that is opened twice over torn writes is gone
const QUIET = 600_000 // ms
const LAY_BALLAST = 20_000
const RARER = 5 // times four, as often at most: laying it may be what filled the disk

const FAILED = new Set(['outbox.disk_full', 'outbox.storage_stopped'])

let wanted = 1 // the start's
let had = 0
let torn = false
let laid = 0
/** @type {number[]} when the last turns began, by `performance.now()` */
let begun = []
/** @type {ReturnType<typeof setTimeout> | undefined} */
let laying
/** @type {Promise<void> | null} */
let turning = null

/** Turn the log of the last start over, and again after each write that failed: once per page. */
export function startTurning() {
  if (!keepsLog()) return
  addEventListener('seamwalk:torn', () => {
    wanted += 1
    torn = true
    begin()
  })
  begin()
}

function begin() {
  turning ??= turned().finally(() => {
    turning = null
    if (had !== wanted) begin() // what failed while the last was being ended
  })
}

/** Where it does not go at once the ballast gives room; where it does not go then either, the screen asks to stay. */
async function turned() {
  let dropped = torn
  torn = false
  if (dropped) await dropBallast().catch(() => {})
  for (let failures = 0; had !== wanted;) {
    await pause(failures)
    const asked = wanted
    const fault = await turn().then(() => null, (reason) => reason)
    failures = fault ? failures + 1 : 0
    if (!fault) had = asked
    else if (FAILED.has(fault.code)) { // else it was not for want of room: another window holds the store
      dropped = true
      await dropBallast().catch(() => {})
      if (failures > 1) noteStorage('log', 'storage.torn')
    }
  }
  noteStorage('log', null)
  if (!dropped) return
  await noteFull(true).catch(() => {}) // if it was not for want of room, the next photo finds the ballast's and says so
  clearTimeout(laying)
  laying = setTimeout(() => layBallast().catch(() => {}), LAY_BALLAST * 4 ** Math.min(laid, RARER))
  laid += 1
}

/** A storage in which writes go on failing is not filled without a break. @param {number} failures in a row */
async function pause(failures) {
  const now = performance.now()
  begun = [...begun.filter((at) => now - at < QUIET), now]
  const often = begun.length > MOST
  const wait = often ? Math.max(...WAITS) : WAITS[Math.min(failures, WAITS.length - 1)]
  if (often) noteStorage('log', 'storage.torn')
  if (wait) await new Promise((resolve) => setTimeout(resolve, wait))
}

/** Write more than a log holds, below the ballast's keys, and take it away again. */
async function turn() {
  await seeRoom()
  const relaxed = { relaxed: true, need: 0 }
  for (let n = 0; n < LEAVES; n += AT_ONCE) {
    await withDb(['ballast'], 'readwrite', (tx) => Promise.all(leaves().map((leaf, at) => tx.store.put(leaf, -1 - n - at))), relaxed)
  }
  for (let n = 0; n < LEAVES; n += AT_ONCE) {
    await withDb(['ballast'], 'readwrite', (tx) => tx.store.delete(IDBKeyRange.bound(-n - AT_ONCE, -1 - n)), relaxed)
  }
}

/** Random, because the store under the browser compresses. */
function leaves() {
  return Array.from({ length: AT_ONCE }, () => crypto.getRandomValues(new Uint8Array(LEAF)))
}
