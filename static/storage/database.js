// The one accessor to the phone's database.
//
// `fn` may run more than once, so it must be idempotent: keys chosen by us, nothing counted. It may await only
// requests of its own transaction: fetch, timers, file reads and WebCrypto would let the transaction end.
//
// Writes go one after the other, in all windows: a browser that is killed while two are under way takes its own marks of
// them for damage at its next start, and throws the whole store away (seen in Chromium: tests/browser/test_one_write.py).
// So every write asks for one store more, the same for all, and the browser itself lets none begin before the last has ended.

import { Trouble } from '../words/trouble.js'
import { connection, connectionToWrite, dropConnection, ofNewerBuild, spendConnection } from './connection.js'
import { REOPEN_WAITS, isConnectionFault, isDiskFull, isHalfWritten } from './faults.js'
import { giveRoom, roomGiven } from './held_room.js'
import { withReserve } from './reserve.js'
import { noteStorage } from './standing.js'

// What sending needs. All else of a database that a newer build made is only read: its rows may mean more than we know.
const SENDING = new Set(['outbox', 'receipts', 'meta', 'people', 'ballast'])
const TURNSTILE = 'ballast' // the store that no screen reads: a reader of it waits for every write
const SETTLE_LIMIT = 15_000 // ms; a transaction of at most 1 MiB that takes longer has lost its storage process

/**
 * Run `fn` in one transaction and resolve with its result once the transaction is complete on disk.
 * Writes are strict: flushed before they are called complete.
 *
 * @template T
 * @param {string[]} stores @param {'readonly' | 'readwrite'} mode @param {(tx: any) => Promise<T> | T} fn
 * @param {{relaxed?: boolean, need?: number}} [options] `relaxed` only for bytes that may be lost; `need`: bytes that must be
 *   free where the disk may be full, see `withReserve`
 * @returns {Promise<T>}
 * @throws {Trouble} `outbox.storage_stopped` when the phone's storage does not come back, `outbox.disk_full`, `storage.held`
 *   when another window keeps an older database open, `storage.newer` for a write to what a newer build made; what the
 *   browser said keeps its own `name`, for whoever can make room or do without
 */
export async function withDb(stores, mode, fn, options = {}) {
  const durability = options.relaxed ? 'relaxed' : 'strict'
  for (let tries = 0; ; tries += 1) {
    try {
      const write = () => once(stores, mode, fn, durability)
      const result = await (mode === 'readonly' ? write() : withReserve(write, options.need))
      noteStorage('database', null)
      return result
    } catch (fault) {
      if (mode === 'readwrite' && fault instanceof DOMException && isHalfWritten(fault)) {
        await giveRoom() // before it is opened anew: a store that meets a second torn end is thrown away (see turn.js)
        globalThis.dispatchEvent?.(new Event('seamwalk:torn'))
      }
      if (!isConnectionFault(fault)) throw inWords(fault, mode)
      dropConnection()
      if (tries === REOPEN_WAITS.length) {
        noteStorage('database', 'outbox.storage_stopped')
        throw new Trouble('outbox.storage_stopped', { value: String(fault) })
      }
      await new Promise((resolve) => setTimeout(resolve, REOPEN_WAITS[tries]))
    }
  }
}

/** What no reopening mends. @param {unknown} fault @param {string} mode */
function inWords(fault, mode) {
  if (fault instanceof Trouble && isDiskFull(fault) && mode === 'readonly') noteStorage('database', fault.code)
  if (!(fault instanceof DOMException)) return fault // of `fn` itself, or in words already
  if (isDiskFull(fault)) spendConnection()
  else dropConnection()
  const code = isDiskFull(fault) ? 'outbox.disk_full' : 'outbox.storage_stopped'
  if (mode === 'readonly' && isDiskFull(fault)) noteStorage('database', code) // of a write its caller tells
  return Object.assign(new Trouble(code, { field: 'text', value: String(fault) }), { name: fault.name })
}

/** @param {string[]} stores @param {IDBTransactionMode} mode @param {(tx: any) => any} fn @param {string} durability */
async function once(stores, mode, fn, durability) {
  if (mode === 'readwrite') await roomGiven()
  const db = await (mode === 'readwrite' ? connectionToWrite() : connection())
  if (mode === 'readwrite' && ofNewerBuild(db) && !stores.every((name) => SENDING.has(name))) throw new Trouble('storage.newer')
  const tx = mode === 'readonly' ? db.transaction(stores) : db.transaction([...new Set([...stores, TURNSTILE])], mode, { durability })
  const done = tx.done
  done.catch(() => {}) // always awaited below, but perhaps after `fn` has failed
  let timer
  const limit = new Promise((_, reject) => {
    timer = setTimeout(() => reject(new DOMException('a transaction did not settle', 'TimeoutError')), SETTLE_LIMIT)
  })
  const work = run(tx, () => fn(asked(tx, stores)), done)
  work.catch(() => {})
  try {
    return await Promise.race([work, limit])
  } catch (fault) {
    giveUp(tx) // one that goes on without us would hold its stores, and write after its replay
    throw fault
  } finally {
    clearTimeout(timer)
  }
}

/** What was asked for, as if nothing else were in it. @param {any} tx @param {string[]} stores */
function asked(tx, stores) {
  const objectStore = (/** @type {string} */ name) => tx.objectStore(name)
  return { db: tx.db, objectStore, store: stores.length === 1 ? objectStore(stores[0]) : undefined }
}

/** @param {any} tx */
function giveUp(tx) {
  try {
    tx.abort()
  } catch {
    // ended already: its own error is the one to report
  }
}

/** @param {any} tx @param {() => any} work @param {Promise<void>} done */
async function run(tx, work, done) {
  let result
  try {
    result = await work()
  } catch (fault) {
    giveUp(tx)
    // The transaction's own end says more than the request's: a full disk shows as its error.
    const end = noRoom(tx, await done.then(() => null, (error) => error))
    throw isDiskFull(end) ? end : fault
  }
  await done.catch((end) => { throw noRoom(tx, end) })
  return result
}

/** Large values lie in files of their own, and one that finds no room ends its transaction so: a key that is none never
 * comes so far. @param {any} tx @param {any} end of it */
function noRoom(tx, end) {
  return tx.mode === 'readwrite' && end?.name === 'DataError' ? new DOMException(String(end), 'QuotaExceededError') : end
}

/** Is what is kept here of a newer build than the one that runs? @returns {Promise<boolean>} */
export function newerHere() {
  return withDb(['meta'], 'readonly', (tx) => ofNewerBuild(tx.db))
}
