// The second copy of what is unsent, over a page's life: what another database has left is put back, what waits and has
// no copy gets one, and what the office has confirmed is cleared away.

import { everyRow } from '../outbox/counts.js'
import { twice as entryTwice } from '../outbox/keep.js'
import { twice as photoTwice } from '../photo/keep.js'
import { readWhole } from '../photo/rows.js'
import { copies, dropCopies } from '../spare/copies.js'
import { withDb } from '../storage/database.js'
import { databaseName, mayKeepTwice } from '../storage/twice.js'
import { sentAhead } from './sent_ahead.js'
import { putBack } from './put_back.js'

const SETTLED = 3000 // ms after the last word of the sending
const LOCK_LIMIT = 10_000 // ms: a window that was stopped holds it for ever

/** The database that this page puts back into, and the one into which all came back. */
let begun = ''
let settled = ''
/** One look at a time. @type {Promise<any>} */
let looking = Promise.resolve()

/** Once per page. */
export function startSecondCopy() {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let timer
  const look = (/** @type {() => Promise<any>} */ work) => { looking = looking.then(work).catch(() => {}) } // the next start finds it as it is
  look(begin)
  addEventListener('seamwalk:opened', () => look(lookAgain))
  addEventListener('seamwalk:sync', () => {
    clearTimeout(timer)
    timer = setTimeout(() => { look(lookAgain); look(tidy) }, SETTLED)
  })
}

/** What another window puts back just now is not told twice. Locks are for thrift: all works without them. */
async function begin() {
  begun = await databaseName()
  await alone(async () => {
    const { whole, into } = await putBack()
    settled = whole ? into : ''
  })
  await tidy()
}

/** @param {() => Promise<void>} work */
async function alone(work) {
  let ran = false
  const own = () => { ran = true; return work() }
  const given = new AbortController()
  const timer = setTimeout(() => given.abort(), LOCK_LIMIT)
  try {
    if (navigator.locks?.request) await navigator.locks.request('seamwalk-put-back', { signal: given.signal }, own)
  } catch (fault) {
    if (ran) throw fault
  } finally {
    clearTimeout(timer)
  }
  if (!ran) await own()
}

async function tidy() {
  await copyWaiting()
  await clearSent()
}

/** What did not all come back, also of a database that the browser has thrown away under this page: then nobody is signed
 * in here any more. */
async function lookAgain() {
  const name = await databaseName()
  if (name === settled) return
  if (name !== begun) dispatchEvent(new Event('seamwalk:person'))
  await begin()
  dispatchEvent(new Event('seamwalk:put_back')) // another window may have been faster, and told only its own
}

/** Of a build that made none, of a page that could not, or just put back; an entry that went out before its pictures too. */
export async function copyWaiting() {
  const name = await databaseName()
  const copied = new Set((await copies()).filter(({ store }) => store === name).map(spelled))
  const rows = (await everyRow()).filter(({ state }) => state !== 'damaged')
  for (const one of [...rows, ...(await sentAhead(rows))]) {
    if (!copied.has(spelled(one)) && (await mayKeepTwice(one.what))) await (one.what === 'entry' ? copyEntry(one) : copyPhoto(one)).catch(() => {})
  }
}

/** @param {any} thing */
async function copyEntry({ person, name }) {
  const entry = await withDb(['entries'], 'readonly', (tx) => tx.store.get([person, name]))
  if (entry) await entryTwice(entry)
}

/** @param {any} thing its author need not be known here any more */
async function copyPhoto({ person, name }) {
  const photo = await withDb(['photos'], 'readonly', (tx) => tx.store.get([person, name]))
  if (photo) await photoTwice(photo, await readWhole(photo))
}

/** @param {{person: string, what: string, name: string}} thing */
const spelled = ({ person, what, name }) => `${person} ${what} ${name}`

/**
 * Only what the office has confirmed goes, or what has a copy of its own by now; and a photo that is here, waits for
 * nothing and is in no draft: nobody wanted it, or it is given another copy as soon as it waits. The copies are listed
 * before what waits is asked for: what comes between is in no list.
 */
export async function clearSent() {
  const name = await databaseName()
  const listed = await copies()
  const known = listed.length ? await here(name) : null
  if (!known) return
  const own = new Set(listed.filter(({ store }) => store === name).map(spelled))
  await dropCopies(listed.filter((one) => (one.store === name ? known.done(one) : settled === name && (known.confirmed(one) || own.has(spelled(one))))))
}

/** Null where this is not the database that it was. @param {string} name */
async function here(name) {
  const [rows, drafts, receipts, photos, given] = await withDb(['outbox', 'drafts', 'receipts', 'photos', 'meta'], 'readonly', (tx) => Promise.all([
    tx.objectStore('outbox').getAll(), tx.objectStore('drafts').getAll(), tx.objectStore('receipts').getAllKeys(),
    tx.objectStore('photos').getAllKeys(), tx.objectStore('meta').get(['name'])]))
  if (given !== name) return null
  const wanted = new Set([...rows, ...(await sentAhead(rows))].map(spelled))
  const held = new Set(JSON.stringify(drafts).match(/[0-9a-f]{64}/g))
  const sent = new Set(receipts.map((/** @type {string[]} */ [person, what, , thing]) => spelled({ person, what, name: thing })))
  const kept = new Set(photos.map((/** @type {string[]} */ [person, thing]) => spelled({ person, what: 'photo', name: thing })))
  const confirmed = (/** @type {any} */ one) => sent.has(spelled(one)) && !wanted.has(spelled(one))
  const unwanted = (/** @type {any} */ one) => one.what === 'photo' && kept.has(spelled(one)) && !wanted.has(spelled(one)) && !held.has(one.name)
  return { confirmed, done: (/** @type {any} */ one) => confirmed(one) || unwanted(one) }
}
