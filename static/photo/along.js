// Pictures that somebody else took, kept on this phone for a place without signal. They are the server's: when room runs
// short they go before anything else.

import { currentPerson } from '../people/current.js'
import { withDb } from '../storage/database.js'
import { isDiskFull } from '../storage/faults.js'
import { isFull, withRoom } from '../storage/room.js'
import { photoBytes } from './read.js'
import { dropUnnamed, writeChunks } from './rows.js'

/** Which of these are not on this phone. @param {string[]} names sha256 each @returns {Promise<string[]>} */
export async function elsewhere(names) {
  const found = []
  for (const name of new Set(names)) {
    if (!(await withDb(['photo_chunks'], 'readonly', (tx) => tx.store.getKey([name, 0])))) found.push(name)
  }
  return found
}

/**
 * A person asked: room is made for it.
 * @param {string} sha256 @param {string} job
 * @throws {import('../words/trouble.js').Trouble} `outbox.photo_elsewhere`, `outbox.disk_full`, `sync.offline`
 */
export async function takeAlong(sha256, job) {
  const got = await fetched(sha256, job, false)
  await kept(got, (write) => withRoom('photo', write))
}

/**
 * By itself: only into room that is free, so that nothing on the phone is pushed out for it.
 * @param {string} sha256 @param {string} job @returns {Promise<boolean>} false where there is no room
 * @throws {import('../words/trouble.js').Trouble} `outbox.photo_elsewhere`, `sync.offline`
 */
export async function bringAlong(sha256, job) {
  if (await isFull()) return false
  const got = await fetched(sha256, job, true)
  try {
    await kept(got, (write) => write())
  } catch (fault) {
    if (isDiskFull(fault)) return false
    throw fault
  }
  return true
}

/** Bytes of what came by itself. What is on no list of anybody here any more is given back first. @param {string[]} names still wanted @returns {Promise<number>} */
export async function broughtBytes(names) {
  const person = await currentPerson()
  const rows = await withDb(['photos'], 'readonly', (tx) => tx.store.getAll(IDBKeyRange.bound([person], [person, []])))
  let bytes = 0
  for (const row of rows.filter((/** @type {any} */ one) => one.by_itself)) {
    if (names.includes(row.sha256)) bytes += (await elsewhere([row.sha256])).length ? 0 : row.size
    else {
      await withDb(['photos'], 'readwrite', (tx) => tx.store.delete([person, row.sha256]))
      await dropUnnamed(row.sha256)
    }
  }
  return bytes
}

/** @param {string} sha256 @param {string} job @param {boolean} by_itself */
async function fetched(sha256, job, by_itself) {
  const person = await currentPerson()
  const { bytes, type } = await photoBytes(sha256, job)
  return { bytes, row: { person, sha256, size: bytes.byteLength, type, width: null, height: null, at: new Date().toISOString(), fetched: true, ...(by_itself ? { by_itself } : {}) } }
}

/** @param {{row: any, bytes: Uint8Array<ArrayBuffer>}} got @param {(write: () => Promise<void>) => Promise<void>} making how room is made for it, or not */
async function kept({ row, bytes }, making) {
  try {
    await making(async () => {
      const chunks = await writeChunks(row.sha256, bytes.buffer, false)
      await withDb(['photos'], 'readwrite', async (tx) => {
        const known = await tx.store.get([row.person, row.sha256])
        if (!known || known.fetched) await tx.store.put({ ...row, chunks }) // what somebody here took stays theirs
      })
    })
  } catch (fault) {
    await dropUnnamed(row.sha256).catch(() => {})
    throw fault
  }
}
