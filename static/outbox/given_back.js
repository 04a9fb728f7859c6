// After the office's server was set back to a backup: what it had confirmed since that backup is only on phones again,
// and goes back into the outbox. The old receipts are kept beside, as the server's own word that it had these.
//
//   meta ['restored'] -> digests of the restorations that were heeded
//   meta ['given_back', restoration, person, what, job, name] -> the receipt of before

import { decode } from '../entry/base64url.js'
import { withDb } from '../storage/database.js'

/** @typedef {{last: number, seq: number, at: string, digest: string}} Restoration */

/** @param {Restoration} back @returns {Promise<boolean>} */
export async function isHeeded({ digest }) {
  return ((await withDb(['meta'], 'readonly', (tx) => tx.store.get(['restored']))) ?? []).includes(digest)
}

/**
 * All at once, or nothing. Entries of others that were fetched in that time go back too: their authors' phones may be
 * gone by now, and an entry is its author's whoever brings it.
 * @param {Restoration} back @returns {Promise<number>} how many items are unsent again
 */
export async function giveBack(back) {
  const [receipts, entries, photos] = await Promise.all(['receipts', 'entries', 'photos'].map((store) =>
    withDb([store], 'readonly', (tx) => tx.store.getAll())))
  const undone = receipts.filter((/** @type {any} */ row) => within(back, said(row.token).seq))
  const rows = new Map()
  for (const { person, digest, job, token, seq, from } of entries) {
    const confirmed = undone.some((/** @type {any} */ row) => row.what === 'entry' && row.person === person && row.name === digest)
    if (confirmed || (from === 'pulled' && within(back, seq))) {
      const { kind, subject, at, seq: place } = said(token)
      keep(rows, back, { person, what: 'entry', job, name: digest, kind, subject, at, seq: place, size: token.length })
    }
  }
  for (const { person, job, name, at } of undone.filter((/** @type {any} */ row) => row.what === 'photo')) {
    const photo = photos.find((/** @type {any} */ one) => one.person === person && one.sha256 === name)
    const { size, type } = photo ?? { size: 0, type: '' }
    const row = { person, what: 'photo', job, name, kind: 'photo', subject: name, at: new Date(at).toISOString(), seq: 0, size, type, upload: null }
    keep(rows, back, { ...row, ...((await isWhole(photo)) ? {} : GIVEN_UP(name)) })
  }
  return commit(back, undone, [...rows.values()])
}

/** @param {string} name */
const GIVEN_UP = (name) => ({ state: 'damaged', refusal: { code: 'photo_given_up', field: 'photo', value: name, message: '', wayOut: '' } })

/** @param {Map<string, any>} rows @param {Restoration} back @param {any} row */
function keep(rows, { at }, row) {
  rows.set(JSON.stringify([row.person, row.what, row.job, row.name]),
    { state: 'waiting', refusal: null, failures: 0, next: 0, ...row, again: at })
}

/** @param {Restoration} back @param {any} seq */
function within({ last, seq: end }, seq) {
  return Number.isInteger(seq) && seq > last && seq < end
}

/** What a token that was verified before it was kept says. @param {string} token */
function said(token) {
  return JSON.parse(new TextDecoder().decode(decode(token.split('.')[1], 'token')))
}

/** Are all of its bytes still here? Room may have been made of a confirmed photo. @param {any} photo */
async function isWhole(photo) {
  if (!photo) return false
  const held = await withDb(['photo_chunks'], 'readonly', (tx) => tx.store.count(IDBKeyRange.bound([photo.sha256], [photo.sha256, []])))
  return held === photo.chunks.length
}

/** @param {Restoration} back @param {any[]} undone @param {any[]} rows */
function commit(back, undone, rows) {
  return withDb(['receipts', 'outbox', 'meta'], 'readwrite', async (tx) => {
    const heeded = (await tx.objectStore('meta').get(['restored'])) ?? []
    if (heeded.includes(back.digest)) return 0 // another tab was faster
    for (const row of undone) {
      const key = [row.person, row.what, row.job, row.name]
      await tx.objectStore('meta').put(row, ['given_back', back.digest, ...key])
      const now = await tx.objectStore('receipts').get(key)
      if (now?.token === row.token) await tx.objectStore('receipts').delete(key)
    }
    for (const row of rows) {
      if (!(await tx.objectStore('receipts').getKey([row.person, row.what, row.job, row.name]))) await tx.objectStore('outbox').put(row)
    }
    await tx.objectStore('meta').delete(IDBKeyRange.bound(['told'], ['told', []])) // the office has forgotten the list too
    await tx.objectStore('meta').put([...heeded, back.digest], ['restored'])
    return rows.length
  })
}
