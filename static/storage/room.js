// What happens when the phone's disk is full: second copies of photos and the ballast go first, so that the item in hand is
// finished; then copies of photos fetched from the server, then of those it has confirmed, oldest first; then no new photos, in
// plain words.
// Text always has priority: it is let into the room that photos are refused.

import { givePhotos } from '../spare/copies.js'
import { withDb } from './database.js'
import { Trouble } from '../words/trouble.js'
import { dropBallast, layBallast } from './ballast.js'
import { isDiskFull } from './faults.js'
import { databaseName } from './twice.js'

const PROBE = 24 // bricks that must fit before photos are taken again: room for text, and for turning the log over
const SMALL = 4 * 1024 * 1024 // bytes that must be free to take rows out, which is a write too

/**
 * Run an idempotent write, making room and running it again when the disk is full.
 * @template T @param {'photo' | 'text'} what @param {() => Promise<T>} write @returns {Promise<T>}
 * @throws {Trouble} `outbox.disk_full` when there is no room to make
 */
export async function withRoom(what, write) {
  try {
    if (what === 'photo' && (await isFull()) && !(await roomAgain())) throw full(what)
    return await write()
  } catch (fault) {
    if (!isDiskFull(fault)) throw fault
  }
  try {
    await databaseName().then(givePhotos).catch(() => {}) // a database that is full to the brim may have no name yet
    await dropBallast()
    return await writeWithLess(write)
  } catch (fault) {
    throw isDiskFull(fault) ? full(what) : fault // so full that nothing can be dropped either, which is a write too
  }
}

/** @template T @param {() => Promise<T>} write @returns {Promise<T>} */
async function writeWithLess(write) {
  for (;;) {
    try {
      const result = await write()
      await noteFull(true).catch(() => {}) // what was written stands, whether or not this can be noted
      return result
    } catch (fault) {
      if (!isDiskFull(fault) || !(await dropOldest())) throw fault
    }
  }
}

async function roomAgain() {
  if (!(await layBallast(PROBE))) {
    await dropBallast() // keep what there is for text
    return false
  }
  await noteFull(false)
  return true
}

/** Were photos refused when one was kept last? @returns {Promise<boolean>} */
export function isFull() {
  return withDb(['meta'], 'readonly', (tx) => tx.store.get(['full']))
}

/** @param {boolean} full */
export function noteFull(full) {
  return withDb(['meta'], 'readwrite', (tx) => tx.store.put(full, ['full']))
}

/** @param {string} what */
function full(what) {
  return new Trouble('outbox.disk_full', { field: what, value: '' })
}

/**
 * Drop the bytes of the photo fetched, else confirmed, longest ago. What is chosen and what is dropped is one transaction:
 * a photo just kept by another tab is not taken for an old one.
 * @returns {Promise<boolean>} false when there is none
 */
export function dropOldest() {
  return withDb(['drafts', 'outbox', 'photo_chunks', 'photos', 'receipts'], 'readwrite', async (tx) => {
    const [drafts, outbox, photos, receipts] = await Promise.all(['drafts', 'outbox', 'photos', 'receipts']
      .map((name) => tx.objectStore(name).getAll()))
    for (const name of droppable({ drafts, outbox, photos, receipts })) {
      const range = IDBKeyRange.bound([name], [name, []])
      if (!(await tx.objectStore('photo_chunks').count(range))) continue
      await tx.objectStore('photo_chunks').delete(range)
      return true
    }
    return false
  }, { need: SMALL })
}

/**
 * Names of photos whose bytes this phone may do without, the first to go first: fetched from the office and taken by
 * nobody here; then confirmed. Never one that waits, that a draft holds, or that was kept anew since its receipt. Pure.
 * @param {{drafts: any[], outbox: any[], photos: any[], receipts: any[]}} rows @returns {string[]}
 */
export function droppable({ drafts, outbox, photos, receipts }) {
  const wanted = new Set([...outbox.map(({ name }) => name), ...(JSON.stringify(drafts).match(/[0-9a-f]{64}/g) ?? [])])
  const own = photos.filter((row) => !row.fetched)
  const taken = new Set(own.map((row) => row.sha256))
  const fetched = photos.filter((row) => row.fetched && !taken.has(row.sha256)).sort((a, b) => (a.at < b.at ? -1 : 1))
  const confirmed = receipts.filter((row) => row.what === 'photo').sort((a, b) => a.at - b.at)
  const anew = new Set(own.filter((row) => confirmed.some(({ name, at }) => name === row.sha256 && Date.parse(row.at) > at)).map((row) => row.sha256))
  return [...fetched.map((row) => row.sha256), ...confirmed.map(({ name }) => name)].filter((name) => !wanted.has(name) && !anew.has(name))
}
