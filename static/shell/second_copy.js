// The second copy of what is unsent, over a page's life: what another database has left is put back, what waits in no copy
// gets one, and what the office has confirmed is cleared away.

import { everyRow } from '../outbox/counts.js'
import { photoBytes } from '../photo/read.js'
import { names, read, remove, told } from '../spare/files.js'
import { itemsOf } from '../spare/record.js'
import { clear, ownHeads, restedFor } from '../spare/write.js'
import { withDb } from '../storage/database.js'
import { databaseName, keepTwice } from '../storage/twice.js'
import { putBack } from './put_back.js'

const SETTLED = 3000 // ms after the last word of the sending
const REST = 60_000 // ms: a photo is kept a moment before the entry or the draft that names it is

/** Once per page. */
export function startSecondCopy() {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let timer
  begin().catch(() => {}) // the next start finds it as it is
  addEventListener('seamwalk:sync', () => {
    clearTimeout(timer)
    timer = setTimeout(() => copyWaiting().then(() => clearSent()).catch(() => {}), SETTLED)
  })
}

/** What another window puts back just now is not told twice. Locks are for thrift: all works without them. */
async function begin() {
  const work = async () => { unfinished = !(await putBack()).whole }
  await (navigator.locks?.request ? navigator.locks.request('seamwalk-put-back', work) : work())
  await copyWaiting()
  await clearSent()
}

let unfinished = true

/** Of a build that made none, or of a page that could not. A photo of which there is no whole one is not copied. */
export async function copyWaiting() {
  const own = new Set(ownHeads().map(spelled))
  const rows = (await everyRow()).filter((row) => row.state !== 'damaged' && !own.has(spelled(row)))
  if (!rows.length) return
  const copied = new Set()
  const name = await databaseName()
  for (const one of (await names()).filter((file) => told(file).store === name && !told(file).own)) {
    for (const head of (await headsOf(one)) ?? []) copied.add(spelled(head))
  }
  for (const row of rows) if (!copied.has(spelled(row))) await (row.what === 'entry' ? copyEntry(row) : copyPhoto(row)).catch(() => {})
}

/** @param {any} row of the outbox */
async function copyEntry({ person, name }) {
  const entry = await withDb(['entries'], 'readonly', (tx) => tx.store.get([person, name]))
  if (entry) await keepTwice('text', { what: 'entry', person, name, job: entry.job, kid: entry.kid }, new TextEncoder().encode(entry.token))
}

/** @param {any} row of the outbox */
async function copyPhoto({ person, name }) {
  const photo = await withDb(['photos'], 'readonly', (tx) => tx.store.get([person, name]))
  const { type, width, height, at } = photo ?? {}
  if (photo) await keepTwice('photos', { what: 'photo', person, name, type, width, height, at }, (await photoBytes(name)).bytes)
}

/** @param {{person: string, what: string, name: string}} thing */
const spelled = ({ person, what, name }) => `${person} ${what} ${name}`

/** Nothing that another window is still at, or that a database thrown away meanwhile has left, is taken for sent. What of these
 * files is of no window that lives, or of this one once nothing new came, and waits no more. */
export async function clearSent(rest = REST) {
  const [before, name] = [ownHeads().length, await databaseName()]
  /** @type {Map<string, any[]>} read before what waits is asked for: what came between is in no file read here */
  const heads = new Map()
  for (const one of await names()) {
    if (told(one).own || (unfinished && told(one).store !== name)) continue
    const found = await headsOf(one)
    if (found) heads.set(one, found)
  }
  const needed = await waiting(name)
  if (!needed) return
  for (const [one, found] of heads) if (!found.some(needed)) await remove(one)
  if (ownHeads().some(needed) || ownHeads().length !== before || !restedFor(rest)) return
  await Promise.all([clear('text'), clear('photos')])
}

/** @param {string} file @returns {Promise<any[] | null>} null where it cannot be read: a window that lives may write to it just now */
async function headsOf(file) {
  try {
    const found = []
    for await (const { head } of itemsOf(await read(file))) found.push(head)
    return found
  } catch {
    return null
  }
}

/** Whether a thing waits; a photo that a draft holds will. Null where this is not the database that it was.
 * @param {string} name @returns {Promise<((head: any) => boolean) | null>} */
async function waiting(name) {
  const [rows, drafts, here] = await withDb(['outbox', 'drafts', 'meta'], 'readonly', (tx) => Promise.all([
    tx.objectStore('outbox').getAll(), tx.objectStore('drafts').getAll(), tx.objectStore('meta').get(['name'])]))
  if (here !== name) return null
  const kept = new Set(rows.map(spelled))
  const held = new Set(JSON.stringify(drafts).match(/[0-9a-f]{64}/g))
  return (head) => kept.has(spelled(head)) || held.has(head.name)
}
