// A photo's bytes: from this phone, or on demand from the server. Lists never touch bytes.

import { everyPerson, currentRow } from '../people/current.js'
import { Trouble } from '../words/trouble.js'
import { withDb } from '../storage/database.js'
import { callAs } from '../people/token.js'
import { sha256Hex } from './digest.js'
import { readWhole } from './rows.js'

const KEPT_URLS = 24

/** @type {Map<string, Promise<string>>} sha256 -> object URL, oldest first */
const urls = new Map()

/**
 * @param {string} sha256 @param {string} [job] where it may be fetched from when it is not on this phone
 * @returns {Promise<string>} an object URL; the 24 last asked for stay valid
 * @throws {Trouble} `outbox.photo_damaged`, `outbox.photo_elsewhere`, `sync.offline`
 */
export function photoUrl(sha256, job) {
  let url = urls.get(sha256)
  urls.delete(sha256)
  url ??= photoBytes(sha256, job).then(({ bytes, type }) => URL.createObjectURL(new Blob([bytes], { type })))
  urls.set(sha256, url)
  url.catch(() => urls.get(sha256) === url && urls.delete(sha256))
  for (const [name, old] of urls) {
    if (urls.size <= KEPT_URLS) break
    urls.delete(name)
    old.then((gone) => URL.revokeObjectURL(gone), () => {})
  }
  return url
}

/** @param {string} sha256 @param {string} [job] @returns {Promise<{bytes: Uint8Array<ArrayBuffer>, type: string}>} */
export async function photoBytes(sha256, job) {
  const photo = await kept(sha256)
  const here = photo && (await withDb(['photo_chunks'], 'readonly', (tx) => tx.store.getKey([sha256, 0])))
  if (here) return { bytes: await readWhole(photo), type: photo.type }
  return fetched(sha256, job)
}

/** The row of whoever on this phone kept it. @param {string} sha256 */
async function kept(sha256) {
  for (const person of await everyPerson()) {
    const row = await withDb(['photos'], 'readonly', (tx) => tx.store.get([person.id, sha256]))
    if (row) return row
  }
  return null
}

/** @param {string} sha256 @param {string} [job] */
async function fetched(sha256, job) {
  const person = await currentRow()
  if (!person || !job) throw new Trouble('outbox.photo_elsewhere', { field: 'photo', value: sha256 })
  const reply = await callAs(person, 'GET', `/photos/${sha256}?job=${job}`, { expect: 'bytes' })
  if (reply.status !== 200 || !reply.bytes || (await sha256Hex(reply.bytes)) !== sha256) {
    throw new Trouble('outbox.photo_elsewhere', { field: 'photo', value: sha256 })
  }
  return { bytes: new Uint8Array(reply.bytes), type: reply.headers.get('Content-Type') ?? 'image/jpeg' }
}
