// Keep a photo: bytes read at once, hashed before anything decodes them, stored in chunks, read back and
// re-hashed. Only then is it saved.

import { withDb } from '../storage/database.js'
import { withRoom } from '../storage/room.js'
import { keepTwice } from '../storage/twice.js'
import { Trouble } from '../words/trouble.js'
import { currentPerson } from '../people/current.js'
import { PHOTO_LIMIT } from './chunks.js'
import { sha256Hex } from './digest.js'
import { header } from './header.js'
import { dropUnnamed, readWhole, writeChunks } from './rows.js'

const TRIES = 3

/**
 * @param {File | Blob} file as the camera or the picker handed it over
 * @returns {Promise<{sha256: string, size: number, type: string, width: number | null, height: number | null}>}
 * @throws {Trouble} `outbox.photo_empty`, `outbox.photo_too_large`, `outbox.photo_not_a_picture`,
 *   `outbox.photo_unreadable`, `outbox.disk_full`, `outbox.photo_damaged`
 */
export async function keepPhoto(file) {
  const person = await currentPerson()
  const name = 'name' in file ? String(file.name) : ''
  const bytes = await read(file, name)
  const seen = header(new Uint8Array(bytes), file.type || '')
  if (seen.type === null) {
    throw new Trouble('outbox.photo_not_a_picture', { field: 'photo', value: name || file.type || '?' })
  }
  const sha256 = await sha256Hex(bytes)
  const row = { person, sha256, size: bytes.byteLength, ...seen, type: seen.type, at: new Date().toISOString() }
  await keepRow(row, bytes)
  await twice(row, bytes)
  return { sha256, size: row.size, type: row.type, width: row.width, height: row.height }
}

/** Keep it a second time. @param {any} row saved already @param {ArrayBuffer | Uint8Array<ArrayBuffer>} bytes */
export async function twice({ person, sha256, type, width, height, at }, bytes) {
  await keepTwice({ what: 'photo', person, name: sha256, type, width, height, at }, bytes)
}

/** All of it or nothing. @param {any} row without its chunks @param {ArrayBuffer} bytes @throws {Trouble} as `keepPhoto` */
export async function keepRow(row, bytes) {
  try {
    await withRoom('photo', () => store(row, bytes))
  } catch (fault) {
    await dropUnnamed(row.sha256).catch(() => {})
    throw fault
  }
}

/** @param {File | Blob} file @param {string} name */
async function read(file, name) {
  if (file.size > PHOTO_LIMIT) {
    throw new Trouble('outbox.photo_too_large', { field: 'photo', value: name, size: file.size, limit: PHOTO_LIMIT })
  }
  let bytes
  try {
    bytes = await file.arrayBuffer()
  } catch (fault) {
    throw new Trouble('outbox.photo_unreadable', { field: 'photo', value: name, reason: String(fault) })
  }
  if (bytes.byteLength === 0) throw new Trouble('outbox.photo_empty', { field: 'photo', value: name })
  if (bytes.byteLength !== file.size) { // handed over in part: seen with photos of the camera
    throw new Trouble('outbox.photo_unreadable', { field: 'photo', value: name, reason: `${bytes.byteLength} of ${file.size}` })
  }
  return bytes
}

/** @param {any} row @param {ArrayBuffer} bytes */
async function store(row, bytes) {
  const photo = { ...row, chunks: await writeChunks(row.sha256, bytes, false) }
  try {
    await readWhole(photo)
  } catch (fault) {
    if (!(fault instanceof Trouble) || fault.code !== 'outbox.photo_damaged') throw fault
    await writeChunks(row.sha256, bytes, true) // an older, damaged copy of the same photo
    await readWhole(photo)
  }
  for (let tries = 0; !(await putPhoto(photo)); tries += 1) {
    if (tries === TRIES) throw new Trouble('outbox.photo_damaged', { field: 'photo', value: row.sha256, chunk: 0 })
    await writeChunks(row.sha256, bytes, false) // another tab gave back the room of the same photo just now
  }
}

/** Name the photo, if all of its bytes are there at that moment. @param {any} photo @returns {Promise<boolean>} */
function putPhoto(photo) {
  return withDb(['photos', 'photo_chunks'], 'readwrite', async (tx) => {
    const there = await tx.objectStore('photo_chunks').count(IDBKeyRange.bound([photo.sha256], [photo.sha256, []]))
    if (there !== photo.chunks.length) return false
    await tx.objectStore('photos').put(photo)
    return true
  })
}
