// The second copy of what is only on this phone, in files of the browser's own beside its database: a browser that takes
// its database for damaged throws all of it away, and makes no difference between what was sent and what was not.
//
// It never stands in the way: what cannot be written here is saved all the same. Photos are kept twice only where the
// browser has promised lasting storage: any other takes all of it away for want of room, which they would bring nearer.

import { nameOf, names, remove, told } from './files.js'
import { packed } from './record.js'

const LIMIT = 5000 // ms that what is saved already waits for its second copy

/** @typedef {import('./files.js').Kind} Kind */

/** `heads` of what was written since it was cleared. @typedef {{worker: Worker, answers: ((said: string) => void)[], heads: any[], late: boolean}} Open */
/** @type {Map<Kind, Open>} */
const open = new Map()
/** @type {Set<Kind>} what is not kept twice any more by this page */
const off = new Set()

/**
 * @param {Kind} kind @param {string} store the database's name for itself @param {Omit<import('./record.js').Head, 'size'>} head
 * @param {Uint8Array} bytes @returns {Promise<boolean>} whether it is kept twice
 */
export async function keep(kind, store, head, bytes) {
  if (off.has(kind) || !canWrite() || (kind === 'photos' && !(await isPromised()))) return false
  const file = opened(kind, store)
  file.heads.push(head)
  last = performance.now()
  const said = await asked(file, kind, await packed(head, bytes))
  if (said === 'none') open.delete(kind) // its worker did not load: without signal, before the app is ready for that
  else if (said !== 'done') off.add(kind) // a file that fails is not written to without end
  return said === 'done'
}

/** What this page has written and not cleared. @returns {any[]} */
export function ownHeads() {
  return [...open.values()].flatMap(({ heads }) => heads)
}

let last = -Infinity

/** Has this page written nothing for so long? @param {number} ms */
export function restedFor(ms) {
  return performance.now() - last >= ms
}

/** Throw away what this page has written. @param {Kind} kind */
export async function clear(kind) {
  const file = open.get(kind)
  if (!file || file.late) return
  file.heads = []
  await asked(file, kind, null)
}

/** Give the room of all second copies of photos back, of this page and of those before. No more are made by this page.
 * What another database has left is no second copy: it is all there is. @param {string} store */
export async function givePhotos(store) {
  off.add('photos')
  await clear('photos')
  for (const name of await names()) if (told(name).kind === 'photos' && told(name).store === store) await remove(name)
}

function canWrite() {
  return typeof Worker !== 'undefined' && Boolean(globalThis.navigator?.storage?.getDirectory)
}

async function isPromised() {
  return (await within(navigator.storage.persisted?.().catch(() => false), false)) === true
}

/** @param {Kind} kind @param {string} store */
function opened(kind, store) {
  let file = open.get(kind)
  if (file) return file
  const worker = new Worker(new URL('./file.js', import.meta.url), { type: 'module', name: nameOf(kind, store) })
  file = /** @type {Open} */ ({ worker, answers: [], heads: [], late: false })
  const answer = (/** @type {string} */ said) => file?.answers.shift()?.(said)
  worker.onmessage = ({ data }) => answer(data)
  worker.onerror = () => answer('none')
  open.set(kind, file)
  return file
}

/** @param {Open} file @param {Kind} kind @param {Uint8Array<ArrayBuffer> | null} bytes null to clear @returns {Promise<string>} */
function asked(file, kind, bytes) {
  const answer = new Promise((resolve) => { file.answers.push(resolve) })
  file.worker.postMessage({ kind, bytes }, bytes ? [bytes.buffer] : [])
  return within(answer, 'late').then((said) => {
    file.late = said === 'late' // one that does not answer is waited for once
    return said
  })
}

/** @template T @template U @param {Promise<T> | undefined} work @param {U} otherwise @returns {Promise<T | U | undefined>} */
function within(work, otherwise) {
  return Promise.race([work, new Promise((resolve) => { setTimeout(() => resolve(otherwise), LIMIT) })])
}
