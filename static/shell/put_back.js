// Where the browser has thrown its database away: what was only on this phone is put back from the second copy, and goes
// out under its author's name once they have signed in here again.

import { digestOf } from '../entry/digest.js'
import { payloadOf } from '../entry/payload.js'
import { picturesOf, unsentPhoto } from '../outbox/pictures.js'
import { outboxRows } from '../outbox/rows.js'
import { sha256Hex } from '../photo/digest.js'
import { keepRow } from '../photo/keep.js'
import { copies, dropCopies, readCopy } from '../spare/copies.js'
import { withDb } from '../storage/database.js'
import { withRoom } from '../storage/room.js'
import { databaseName } from '../storage/twice.js'

const STORES = ['chains', 'entries', 'meta', 'outbox', 'photos', 'receipts']

/** @typedef {{entry: any, payload: any}} Signed */
/** @typedef {import('../spare/copies.js').Copy} Copy */

/**
 * Entries first: they are little, and what is closed in the middle has them already. What this very database has lost of
 * its end comes back too: an entry is gone for good only where the office has confirmed it.
 * @returns {Promise<{entries: number, photos: number, whole: boolean, into: string}>} what came back, and into the database of
 *   which name; `whole`: nothing is left for the next start
 */
export async function putBack() {
  const into = await databaseName()
  const back = { entries: 0, photos: 0, whole: true, into }
  /** One that does not come back hides no other, and its copy stays. @type {Attempted} */
  const attempted = (work) => work().catch(() => { back.whole = false })
  const listed = await copies()
  const signed = await asSigned(listed.length ? await lost(listed, into) : [], attempted)
  for (const one of signed) if (await attempted(() => entryBack(one))) back.entries += 1
  if (back.entries) dispatchEvent(new Event('seamwalk:put_back'))
  const wanted = new Set(signed.flatMap(({ entry, payload }) => picturesOf(payload).map((picture) => `${entry.person} ${picture}`)))
  /** Back already. @type {Copy[]} */
  const spent = []
  for (const one of listed.filter(({ what, person, name }) => what === 'photo' && wanted.has(`${person} ${name}`))) {
    const came = await photoBack(one).catch(() => dropCopies(spent.splice(0)).then(() => photoBack(one))).catch(() => null) // the copies of what is back give room
    if (came === null) back.whole = false
    else if (one.store !== into) spent.push(one)
    if (!came) continue
    back.photos += 1
    await note()
  }
  for (const one of signed) await attempted(() => entryBack(one)) // pictures that came since wait now too
  if (signed.length) await noteGone(wanted)
  return back
}

/** Copies of another database's entries, and of those that this one had. @param {Copy[]} listed @param {string} into */
async function lost(listed, into) {
  const [entries, receipts] = await withDb(['entries', 'receipts'], 'readonly', (tx) => Promise.all([
    tx.objectStore('entries').getAllKeys(), tx.objectStore('receipts').getAllKeys()]))
  const here = new Set([...entries, ...receipts].map((/** @type {string[]} */ key) => `${key[0]} ${key.at(-1)}`))
  return listed.filter(({ store, what, person, name }) => what === 'entry' && (store !== into || !here.has(`${person} ${name}`)))
}

/** @typedef {(work: () => Promise<any>) => Promise<any>} Attempted */

/** Entries that are as they were signed, in the order of their chains. @param {Copy[]} lost @param {Attempted} attempted @returns {Promise<Signed[]>} */
async function asSigned(lost, attempted) {
  /** @type {Signed[]} */
  const found = []
  for (const one of lost) {
    await attempted(async () => {
      const copy = await readCopy(one)
      if (!copy) return // another window was faster
      const { head: { person, name: digest, job, kid }, body } = copy
      const token = await body.text()
      const [front, middle] = token.split('.')
      if ((await digestOf(`${front}.${middle}`)) !== digest) return
      found.push({ entry: { person, digest, job, kid, token, from: 'own' }, payload: payloadOf(token) })
    })
  }
  return found.sort((a, b) => a.payload.seq - b.payload.seq)
}

/** @param {Copy} one @returns {Promise<boolean>} false where it is here, or damaged */
async function photoBack(one) {
  const copy = await readCopy(one)
  if (!copy || (await withDb(['photos'], 'readonly', (tx) => tx.store.getKey([one.person, one.name])))) return false
  const { head: { person, name: sha256, type, width, height, at }, body } = copy
  const bytes = await body.arrayBuffer()
  if ((await sha256Hex(bytes)) !== sha256) return false
  await keepRow({ person, sha256, size: bytes.byteLength, type, width, height, at }, bytes)
  return true
}

/**
 * Its chain goes on after it where the key that signed it is here: the same database, without its end.
 * @param {Signed} one @returns {Promise<boolean>} false where the entry is here; a picture of it that came back later waits now
 */
function entryBack({ entry, payload }) {
  return withRoom('text', () => withDb(STORES, 'readwrite', async (tx) => {
    const { person, digest, job } = entry
    const photos = []
    for (const picture of picturesOf(payload)) photos.push(await unsentPhoto(tx, entry, picture))
    const [own, ...theirs] = outboxRows(entry, payload, photos.filter(Boolean))
    const here = (await tx.objectStore('entries').getKey([person, digest])) ?? (await tx.objectStore('receipts').getKey([person, 'entry', job, digest]))
    if (!here) {
      await tx.objectStore('entries').put(entry)
      const chain = await tx.objectStore('chains').get([entry.kid, job])
      if ((chain?.digest ?? null) === payload.prev) await tx.objectStore('chains').put({ kid: entry.kid, job, seq: payload.seq, digest })
      await count(tx.objectStore('meta'), 'entries')
    }
    for (const row of here ? theirs : [own, ...theirs]) await tx.objectStore('outbox').put(row)
    return !here
  }))
}

/** @param {any} meta @param {'entries' | 'photos'} what */
async function count(meta, what) {
  const before = (await meta.get(['put_back'])) ?? { entries: 0, photos: 0, gone: 0 }
  await meta.put({ ...before, [what]: before[what] + 1 }, ['put_back'])
}

/** A photo more. */
async function note() {
  await withRoom('text', () => withDb(['meta'], 'readwrite', (tx) => count(tx.store, 'photos'))).catch(() => {}) // it is back, said or not
  dispatchEvent(new Event('seamwalk:put_back'))
}

/** Photos that came back with no file, told by number. @param {Set<string>} wanted person and name each */
async function noteGone(wanted) {
  await withRoom('text', () => withDb(['meta', 'photos', 'receipts'], 'readwrite', async (tx) => {
    const here = new Set((await tx.objectStore('photos').getAllKeys()).map((/** @type {string[]} */ key) => key.join(' ')))
    const sent = new Set((await tx.objectStore('receipts').getAllKeys()).map((/** @type {string[]} */ [person, , , name]) => `${person} ${name}`))
    const before = await tx.objectStore('meta').get(['put_back'])
    const gone = [...wanted].filter((one) => !here.has(one) && !sent.has(one)).length
    if (before) await tx.objectStore('meta').put({ ...before, gone }, ['put_back'])
  })).catch(() => {})
  dispatchEvent(new Event('seamwalk:put_back'))
}
