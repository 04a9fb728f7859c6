// The second copy of what is only on this phone, in files of the browser's own beside its database: a browser that takes
// its database for damaged throws all of it away, and makes no difference between what was sent and what was not.
//
// It never stands in the way: what cannot be written here is saved all the same, and photos take only room that is free.

import { nameOf, names, remove, told } from './files.js'
import { packed } from './record.js'

const LIMIT = 5000 // ms that what is saved already waits for its second copy
const FREE = 512 * 1024 * 1024 // bytes that the browser must say are free before a photo is kept twice

/** @typedef {import('./files.js').Kind} Kind */

/** @type {Map<Kind, {worker: Worker, answers: ((said: string) => void)[], written: number}>} */
const open = new Map()
/** @type {Set<Kind>} what is not kept twice any more by this page */
const off = new Set()

/**
 * @param {Kind} kind @param {string} store the database's name for itself @param {Omit<import('./record.js').Head, 'size'>} head
 * @param {Uint8Array} bytes @returns {Promise<boolean>} whether it is kept twice
 */
export async function keep(kind, store, head, bytes) {
  if (off.has(kind) || !canWrite() || (kind === 'photos' && !(await isFree(bytes.length)))) return false
  const file = opened(kind, store)
  file.written += 1
  const said = await asked(file, kind, await packed(head, bytes))
  if (said !== 'done') off.add(kind) // a file that fails is not written to without end
  return said === 'done'
}

/** How much this page has written: unchanged, nothing came meanwhile. */
export function written() {
  return [...open.values()].reduce((sum, { written: one }) => sum + one, 0)
}

/** Throw away what this page has written. @param {Kind} kind */
export async function clear(kind) {
  const file = open.get(kind)
  if (file) await asked(file, kind, null)
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

/** @param {number} size */
async function isFree(size) {
  const { quota = 0, usage = 0 } = (await navigator.storage.estimate?.().catch(() => null)) ?? {}
  return quota - usage > FREE + size
}

/** @param {Kind} kind @param {string} store */
function opened(kind, store) {
  let file = open.get(kind)
  if (file) return file
  const worker = new Worker(new URL('./file.js', import.meta.url), { type: 'module', name: nameOf(kind, store) })
  file = { worker, answers: [], written: 0 }
  const answer = (/** @type {string} */ said) => file?.answers.shift()?.(said)
  worker.onmessage = ({ data }) => answer(data)
  worker.onerror = () => answer('none')
  open.set(kind, file)
  return file
}

/** @param {{worker: Worker, answers: ((said: string) => void)[]}} file @param {Kind} kind @param {Uint8Array<ArrayBuffer> | null} bytes @returns {Promise<string>} */
function asked(file, kind, bytes) {
  const answer = new Promise((resolve) => { file.answers.push(resolve) })
  file.worker.postMessage({ kind, bytes }, bytes ? [bytes.buffer] : [])
  const late = new Promise((resolve) => { setTimeout(() => resolve('late'), LIMIT) })
  return Promise.race([answer, late])
}
