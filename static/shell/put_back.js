// Where the browser has thrown its database away: what was only on this phone is put back from the second copy, and goes
// out under its author's name once they have signed in here again. What the office has confirmed is cleared away.

import { decode } from '../entry/base64url.js'
import { digestOf } from '../entry/digest.js'
import { everyRow } from '../outbox/counts.js'
import { picturesOf, unsentPhoto } from '../outbox/pictures.js'
import { outboxRows } from '../outbox/rows.js'
import { sha256Hex } from '../photo/digest.js'
import { keepRow } from '../photo/keep.js'
import { names, read, remove, told } from '../spare/files.js'
import { itemsOf } from '../spare/record.js'
import { clear, written } from '../spare/write.js'
import { withDb } from '../storage/database.js'
import { readMeta, writeMeta } from '../storage/meta.js'
import { withRoom } from '../storage/room.js'
import { databaseName } from '../storage/twice.js'

const SETTLED = 3000 // ms after the last word of the sending
const STORES = ['entries', 'outbox', 'photos', 'receipts']

/** @typedef {{entry: any, payload: any}} Signed */

/** Once per page. */
export function startPuttingBack() {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let timer
  putBack().catch(() => {}) // the next start finds it as it is
  addEventListener('seamwalk:sync', () => {
    clearTimeout(timer)
    timer = setTimeout(() => clearSent().catch(() => {}), SETTLED)
  })
}

/** @returns {Promise<{entries: number, photos: number}>} what came back; what found no room comes at the next start */
export async function putBack() {
  const name = await databaseName()
  const lost = (await names()).filter((one) => told(one).store !== name)
  const back = { entries: 0, photos: 0 }
  const signed = lost.length ? await whole(lost) : []
  const wanted = new Set(signed.flatMap(({ entry, payload }) => picturesOf(payload).map((picture) => `${entry.person} ${picture}`)))
  unfinished = false
  for await (const { head, body } of every(lost, 'photos')) {
    if (wanted.has(`${head.person} ${head.name}`) && (await attempted(() => photoBack(head, body)))) back.photos += 1
  }
  for (const one of signed) if (await attempted(() => entryBack(one))) back.entries += 1
  if (back.entries || back.photos) await note(back)
  await clearSent()
  return back
}

let unfinished = true

/** One that does not come back hides no other, and its file stays. @param {() => Promise<boolean>} work */
async function attempted(work) {
  try {
    return await work()
  } catch {
    unfinished = true
    return false
  }
}

/** What of these files is of no window that lives, or of this one once nothing new came, and waits no more. */
export async function clearSent() {
  const before = written()
  const [needed, name] = [await waiting(), await databaseName()]
  for (const one of await names()) {
    if (told(one).own || (unfinished && told(one).store !== name)) continue
    let still = false
    for await (const { head } of itemsOf(await read(one))) still ||= needed(head)
    if (!still) await remove(one)
  }
  if (needed() || written() !== before) return
  await clear('text')
  await clear('photos')
}

/** What waits: of a thing, or at all. A photo that a draft holds will wait. @returns {Promise<(head?: any) => boolean>} */
async function waiting() {
  const [rows, drafts] = await Promise.all([everyRow(), withDb(['drafts'], 'readonly', (tx) => tx.store.getAll())])
  const kept = new Set(rows.map(({ person, what, name }) => `${person} ${what} ${name}`))
  const held = new Set(JSON.stringify(drafts).match(/[0-9a-f]{64}/g))
  return (head) => (head ? kept.has(`${head.person} ${head.what} ${head.name}`) || held.has(head.name) : kept.size + held.size > 0)
}

/** @param {string[]} files @param {string} kind */
async function* every(files, kind) {
  for (const name of files.filter((one) => told(one).kind === kind)) yield* itemsOf(await read(name))
}

/** Entries that are as they were signed. @param {string[]} files @returns {Promise<Signed[]>} */
async function whole(files) {
  const found = new Map()
  for await (const { head: { person, name: digest, job, kid }, body } of every(files, 'text')) {
    const token = await body.text()
    const [front, middle] = token.split('.')
    if ((await digestOf(`${front}.${middle}`)) !== digest) continue
    const payload = JSON.parse(new TextDecoder().decode(decode(middle, 'token')))
    found.set(`${person} ${digest}`, { entry: { person, digest, job, kid, token, from: 'own' }, payload })
  }
  return [...found.values()]
}

/** @param {any} head @param {Blob} body @returns {Promise<boolean>} false where it is here, or damaged */
async function photoBack({ person, name: sha256, size, type, width, height, at }, body) {
  if (await withDb(['photos'], 'readonly', (tx) => tx.store.getKey([person, sha256]))) return false
  const bytes = await body.arrayBuffer()
  if ((await sha256Hex(bytes)) !== sha256) return false
  await keepRow({ person, sha256, size, type, width, height, at }, bytes)
  return true
}

/**
 * Its chain is not begun anew: the key that signed it is gone with the database.
 * @param {Signed} one @returns {Promise<boolean>} false where the entry is here; a picture of it that came back later waits now
 */
function entryBack({ entry, payload }) {
  return withRoom('text', () => withDb(STORES, 'readwrite', async (tx) => {
    const { person, digest, job } = entry
    const photos = []
    for (const picture of picturesOf(payload)) photos.push(await unsentPhoto(tx, entry, picture))
    const [own, ...theirs] = outboxRows(entry, payload, photos.filter(Boolean))
    const here = (await tx.objectStore('entries').getKey([person, digest])) ?? (await tx.objectStore('receipts').getKey([person, 'entry', job, digest]))
    if (!here) await tx.objectStore('entries').put(entry)
    for (const row of here ? theirs : [own, ...theirs]) await tx.objectStore('outbox').put(row)
    return !here
  }))
}

/** @param {{entries: number, photos: number}} back */
async function note({ entries, photos }) {
  const before = (await readMeta(['put_back'])) ?? { entries: 0, photos: 0 }
  await writeMeta(['put_back'], { entries: before.entries + entries, photos: before.photos + photos })
  dispatchEvent(new Event('seamwalk:put_back'))
}
