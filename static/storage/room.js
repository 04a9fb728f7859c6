// What happens when the phone's disk is full: the ballast goes first, so that the item in hand is finished;
// then copies of photos fetched from the server, then of those it has confirmed, oldest first; then no new photos, in
// plain words.
// Text always has priority: it is let into the room that photos are refused.

import { withDb } from './database.js'
import { Trouble } from '../words/trouble.js'
import { dropBallast, layBallast } from './ballast.js'
import { isDiskFull } from './faults.js'
import { readMeta, writeMeta } from './meta.js'

const PROBE = 8 // bricks that must fit before photos are taken again

/**
 * Run an idempotent write, making room and running it again when the disk is full.
 * @template T @param {'photo' | 'text'} what @param {() => Promise<T>} write @returns {Promise<T>}
 * @throws {Trouble} `outbox.disk_full` when there is no room to make
 */
export async function withRoom(what, write) {
  if (what === 'photo' && (await readMeta(['full'])) && !(await roomAgain())) throw full(what)
  try {
    return await write()
  } catch (fault) {
    if (!isDiskFull(fault)) throw fault
  }
  await dropBallast()
  for (;;) {
    try {
      const result = await write()
      await writeMeta(['full'], true)
      return result
    } catch (fault) {
      if (!isDiskFull(fault)) throw fault
      if (!(await dropOldest())) throw full(what)
    }
  }
}

async function roomAgain() {
  if (!(await layBallast(PROBE))) {
    await dropBallast() // keep what there is for text
    return false
  }
  await writeMeta(['full'], false)
  return true
}

/** @param {string} what */
function full(what) {
  return new Trouble('outbox.disk_full', { field: what, value: '' })
}

/** Drop the bytes of the photo fetched, else confirmed, longest ago. @returns {Promise<boolean>} false when there is none */
export async function dropOldest() {
  const receipts = await withDb(['receipts'], 'readonly', (tx) => tx.store.getAll())
  const waiting = await withDb(['outbox'], 'readonly', (tx) => tx.store.getAll())
  const wanted = new Set(waiting.map((/** @type {any} */ row) => row.name))
  const confirmed = receipts.filter((/** @type {any} */ row) => row.what === 'photo')
  confirmed.sort((/** @type {any} */ a, /** @type {any} */ b) => a.at - b.at)
  for (const name of [...await fetched(), ...confirmed.map((/** @type {any} */ { name }) => name)].filter((one) => !wanted.has(one))) {
    const range = IDBKeyRange.bound([name], [name, []])
    const dropped = await withDb(['photo_chunks'], 'readwrite', async (tx) => {
      const count = await tx.store.count(range)
      await tx.store.delete(range)
      return count
    })
    if (dropped) return true
  }
  return false
}

/** Photos that are here only because they were fetched, oldest first; not those that somebody here took too. @returns {Promise<string[]>} */
async function fetched() {
  const rows = await withDb(['photos'], 'readonly', (tx) => tx.store.getAll())
  const taken = new Set(rows.filter((/** @type {any} */ row) => !row.fetched).map((/** @type {any} */ row) => row.sha256))
  return rows.filter((/** @type {any} */ row) => row.fetched && !taken.has(row.sha256)).sort((/** @type {any} */ a, /** @type {any} */ b) => (a.at < b.at ? -1 : 1)).map((/** @type {any} */ row) => row.sha256)
}
