// The second copy of what is unsent, over a page's life: what another database has left is put back, what waits and has
// no copy gets one, and what the office has confirmed is cleared away.

import { everyRow } from '../outbox/counts.js'
import { twice as entryTwice } from '../outbox/keep.js'
import { twice as photoTwice } from '../photo/keep.js'
import { photoBytes } from '../photo/read.js'
import { copies, dropCopies } from '../spare/copies.js'
import { withDb } from '../storage/database.js'
import { databaseName } from '../storage/twice.js'
import { putBack } from './put_back.js'

const SETTLED = 3000 // ms after the last word of the sending

/** Once per page. */
export function startSecondCopy() {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let timer
  begin().catch(() => {}) // the next start finds it as it is
  addEventListener('seamwalk:opened', () => { lookAgain().catch(() => {}) })
  addEventListener('seamwalk:sync', () => {
    clearTimeout(timer)
    timer = setTimeout(() => copyWaiting().then(() => clearSent()).catch(() => {}), SETTLED)
  })
}

/** What another window puts back just now is not told twice. Locks are for thrift: all works without them. */
async function begin() {
  begun = await databaseName()
  const work = async () => {
    const { whole, into } = await putBack()
    settled = whole ? into : ''
  }
  await (navigator.locks?.request ? navigator.locks.request('seamwalk-put-back', work) : work())
  await copyWaiting()
  await clearSent()
}

/** The database that this page puts back into, and the one into which all came back. */
let begun = ''
let settled = ''

/** The browser may have thrown the database away under a page that lives: then nobody is signed in here any more. */
async function lookAgain() {
  if (!begun || begun === (await databaseName())) return
  const done = begin()
  dispatchEvent(new Event('seamwalk:person'))
  await done
  dispatchEvent(new Event('seamwalk:put_back')) // another window may have been faster, and told only its own
}

/** Of a build that made none, of a page that could not, or just put back. */
export async function copyWaiting() {
  const name = await databaseName()
  const copied = new Set((await copies()).filter(({ store }) => store === name).map(spelled))
  for (const row of await everyRow()) {
    if (row.state !== 'damaged' && !copied.has(spelled(row))) await (row.what === 'entry' ? copyEntry(row) : copyPhoto(row)).catch(() => {})
  }
}

/** @param {any} row of the outbox */
async function copyEntry({ person, name }) {
  const entry = await withDb(['entries'], 'readonly', (tx) => tx.store.get([person, name]))
  if (entry) await entryTwice(entry)
}

/** @param {any} row of the outbox */
async function copyPhoto({ person, name }) {
  const photo = await withDb(['photos'], 'readonly', (tx) => tx.store.get([person, name]))
  if (photo) await photoTwice(photo, (await photoBytes(name)).bytes)
}

/** @param {{person: string, what: string, name: string}} thing */
const spelled = ({ person, what, name }) => `${person} ${what} ${name}`

/**
 * The copies are listed before what waits is asked for: what comes between is in no list. A photo that was kept and is in
 * no entry and no draft yet loses its copy here, and is given another as soon as it waits.
 */
export async function clearSent() {
  const name = await databaseName()
  const listed = await copies()
  const needed = await waiting(name)
  if (needed) await dropCopies(listed.filter((one) => (one.store === name ? !needed(one) : settled === name)))
}

/** Whether a thing waits; a photo that a draft holds will. Null where this is not the database that it was.
 * @param {string} name @returns {Promise<((thing: any) => boolean) | null>} */
async function waiting(name) {
  const [rows, drafts, here] = await withDb(['outbox', 'drafts', 'meta'], 'readonly', (tx) => Promise.all([
    tx.objectStore('outbox').getAll(), tx.objectStore('drafts').getAll(), tx.objectStore('meta').get(['name'])]))
  if (here !== name) return null
  const kept = new Set(rows.map(spelled))
  const held = new Set(JSON.stringify(drafts).match(/[0-9a-f]{64}/g))
  return (thing) => kept.has(spelled(thing)) || held.has(thing.name)
}
