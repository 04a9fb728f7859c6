// Photo bytes in the database: chunks with their digests, checked at every reading.

import { withDb } from '../storage/database.js'
import { Trouble } from '../words/trouble.js'
import { CHUNK, chunkPlan } from './chunks.js'
import { sha256Hex } from './digest.js'

const UNREADABLE = new Set(['NotReadableError', 'DataError']) // one row's own file is gone or damaged: no other's
const ROWS_AT_ONCE = 4 // 1 MiB a transaction: short ones survive a phone that pauses the page

/**
 * Write the chunks that are missing, or all of them over damaged ones.
 * @param {string} sha256 @param {ArrayBuffer} bytes @param {boolean} overDamaged
 * @returns {Promise<string[]>} the chunks' digests in order
 */
export async function writeChunks(sha256, bytes, overDamaged) {
  const digests = []
  const plan = chunkPlan(bytes.byteLength)
  for (let at = 0; at < plan.length; at += ROWS_AT_ONCE) {
    /** @type {any[]} */
    const rows = []
    for (const { n, from, to } of plan.slice(at, at + ROWS_AT_ONCE)) {
      const part = bytes.slice(from, to)
      rows.push({ photo: sha256, n, digest: await sha256Hex(part), bytes: part })
    }
    digests.push(...rows.map((row) => row.digest))
    await withDb(['photo_chunks'], 'readwrite', async (tx) => {
      for (const row of rows) {
        if (overDamaged || !(await tx.store.getKey([row.photo, row.n]))) await tx.store.put(row)
      }
    })
  }
  return digests
}

/**
 * One stored chunk, re-hashed.
 * @param {string} sha256 @param {number} n @param {string} digest what it must be
 * @returns {Promise<ArrayBuffer>} @throws {Trouble} `outbox.photo_damaged`
 */
export async function readChunk(sha256, n, digest) {
  const row = await withDb(['photo_chunks'], 'readonly', (tx) => tx.store.get([sha256, n])).catch((fault) => {
    if (!UNREADABLE.has(fault?.name)) throw fault
  })
  if (!row || (await sha256Hex(row.bytes)) !== digest) {
    throw new Trouble('outbox.photo_damaged', { field: 'photo', value: sha256, chunk: n + 1 })
  }
  return row.bytes
}

/**
 * All bytes of a photo, each chunk and the whole re-hashed.
 * @param {{sha256: string, size: number, chunks: string[]}} photo
 * @returns {Promise<Uint8Array<ArrayBuffer>>} @throws {Trouble} `outbox.photo_damaged`
 */
export async function readWhole(photo) {
  const bytes = new Uint8Array(photo.size)
  for (const [n, digest] of photo.chunks.entries()) {
    bytes.set(new Uint8Array(await readChunk(photo.sha256, n, digest)), n * CHUNK)
  }
  if ((await sha256Hex(bytes)) !== photo.sha256) {
    throw new Trouble('outbox.photo_damaged', { field: 'photo', value: photo.sha256, chunk: 0 })
  }
  return bytes
}

/** Give back the room of a photo that could not be kept whole, unless somebody's row names it. @param {string} sha256 */
export async function dropUnnamed(sha256) {
  await withDb(['photos', 'photo_chunks'], 'readwrite', async (tx) => {
    const kept = await tx.objectStore('photos').getAllKeys()
    if (kept.some((/** @type {[string, string]} */ [, name]) => name === sha256)) return
    await tx.objectStore('photo_chunks').delete(IDBKeyRange.bound([sha256], [sha256, []]))
  })
}
