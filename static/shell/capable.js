// Can this browser window keep work at all? Really write, reopen, read back and verify one chunk and one key.
// Private windows and locked-down browsers fail here, before anybody relies on them.

import { makeKey } from '../entry/key.js'
import { parseJws, verifyJws } from '../entry/parse.js'
import { makeProof } from '../entry/proof.js'
import { dropConnection } from '../storage/connection.js'
import { withDb } from '../storage/database.js'

const LIMIT = 8000
const PLACE = ['probe', 'capable']

/** @type {Promise<{ok: boolean, reason: string | null}> | null} */
let known = null

/** Tried once per page. @returns {Promise<{ok: boolean, reason: string | null}>} `reason` is a words key */
export function capable() {
  known ??= Promise.race([tried(), new Promise((resolve) => {
    setTimeout(() => resolve({ ok: false, reason: 'shell.not_capable.storage' }), LIMIT)
  })])
  return known
}

async function tried() {
  if (!globalThis.isSecureContext || !globalThis.crypto?.subtle) return { ok: false, reason: 'shell.not_capable.insecure' }
  if (!globalThis.indexedDB) return { ok: false, reason: 'shell.not_capable.storage' }
  try {
    if (!(await keepsBytes())) return { ok: false, reason: 'shell.not_capable.storage' }
  } catch {
    return { ok: false, reason: 'shell.not_capable.storage' }
  }
  try {
    if (!(await keepsKeys())) return { ok: false, reason: 'shell.not_capable.key' }
  } catch {
    return { ok: false, reason: 'shell.not_capable.key' }
  }
  return { ok: true, reason: null }
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
