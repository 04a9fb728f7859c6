// Can this browser window keep work at all? Really write, reopen, read back and verify one chunk and one key.
// Private windows and locked-down browsers fail here, before anybody relies on them.

import { makeKey } from '../entry/key.js'
import { parseJws, verifyJws } from '../entry/parse.js'
import { makeProof } from '../entry/proof.js'
import { dropConnection } from '../storage/connection.js'
import { everyPerson } from '../people/current.js'
import { newerHere, withDb } from '../storage/database.js'
import { isDiskFull } from '../storage/faults.js'
import { Trouble } from '../words/trouble.js'

const LIMIT = 2000 // ms until a window that has not shown that it can says that it has not
const AGAIN = 2000
const PASSING = ['shell.not_capable.slow', 'shell.not_capable.held', 'shell.not_capable.full'] // may be over a moment later
const PLACE = ['probe', 'capable']

/** @typedef {{ok: boolean, reason: string | null, newer?: boolean}} Able `reason` is a words key; `newer`: what is kept
 *   here is of a newer build, and only read and sent */

/** @type {Promise<Able> | null} */
let known = null

/**
 * Known within 2 s, once per page. A window that was slow, or whose records another window held, goes on being tried:
 * `seamwalk:able` on `window` then tells what has become of it.
 * @returns {Promise<Able>}
 */
export function capable() {
  known ??= within()
  return known
}

async function within() {
  const trial = tried()
  const first = await Promise.race([trial, new Promise((resolve) => { setTimeout(() => resolve(no('shell.not_capable.slow')), LIMIT) })])
  if (PASSING.includes(first.reason)) follow(trial)
  return first
}

/** @param {Promise<Able>} trial */
async function follow(trial) {
  for (let able = await trial; ; able = await tried()) {
    known = Promise.resolve(able)
    window.dispatchEvent(new CustomEvent('seamwalk:able', { detail: able }))
    if (!PASSING.includes(able.reason ?? '')) return
    await new Promise((resolve) => setTimeout(resolve, AGAIN))
  }
}

/** @returns {Promise<Able>} */
async function tried() {
  if (!globalThis.isSecureContext || !globalThis.crypto?.subtle) return no('shell.not_capable.insecure')
  if (!globalThis.indexedDB) return no('shell.not_capable.storage')
  try {
    if (await newerHere()) return { ok: true, reason: null, newer: true }
    if (!(await keepsBytes())) return no('shell.not_capable.storage')
  } catch (fault) {
    return (await keptBefore(fault)) ? { ok: true, reason: null } : no(whyNot(fault))
  }
  try {
    if (!(await keepsKeys())) return no('shell.not_capable.key')
  } catch (fault) {
    if (!(await keptBefore(fault))) return no(isDiskFull(fault) ? whyNot(fault) : 'shell.not_capable.key')
  }
  return { ok: true, reason: null }
}

/** A disk that is full just now says nothing against a window that has kept work: each thing that finds no room is told,
 * and what is kept here must be seen and sent. @param {unknown} fault */
async function keptBefore(fault) {
  return isDiskFull(fault) && (await everyPerson().catch(() => [])).length > 0
}

/** @param {unknown} fault of the storage */
function whyNot(fault) {
  if (isDiskFull(fault)) return 'shell.not_capable.full'
  if (!(fault instanceof Trouble)) return 'shell.not_capable.storage'
  if (fault.code === 'storage.held') return 'shell.not_capable.held'
  return String(fault.facts.value).startsWith('TimeoutError') ? 'shell.not_capable.slow' : 'shell.not_capable.storage'
}

/** @param {string} reason @returns {Able} */
function no(reason) {
  return { ok: false, reason }
}

async function keepsBytes() {
  const bytes = crypto.getRandomValues(new Uint8Array(65_536))
  await withDb(['photo_chunks'], 'readwrite', (tx) => tx.store.put({ photo: PLACE[0], n: -1, bytes: bytes.buffer }))
  dropConnection()
  const row = await withDb(['photo_chunks'], 'readonly', (tx) => tx.store.get([PLACE[0], -1]))
  await withDb(['photo_chunks'], 'readwrite', (tx) => tx.store.delete([PLACE[0], -1]))
  const back = new Uint8Array(row?.bytes ?? 0)
  return back.length === bytes.length && back.every((byte, at) => byte === bytes[at])
}

async function keepsKeys() {
  const made = await makeKey()
  await withDb(['keys'], 'readwrite', (tx) => tx.store.put(made.privateKey, PLACE))
  dropConnection()
  const privateKey = await withDb(['keys'], 'readonly', (tx) => tx.store.get(PLACE))
  await withDb(['keys'], 'readwrite', (tx) => tx.store.delete(PLACE))
  const proof = await makeProof('probe', 'enrol', { kid: made.kid, privateKey })
  await verifyJws(await parseJws(proof, 'seamwalk-proof'), made.jwk)
  return true
}
