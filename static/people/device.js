// A person's key on this phone: made here, never leaves, alone in its row. A lost key means a new key and a new
// chain; what was signed still sends.

import { makeKey } from '../entry/key.js'
import { parseJws, verifyJws } from '../entry/parse.js'
import { makeProof } from '../entry/proof.js'
import { withDb } from '../storage/database.js'
import { readMeta, writeMeta } from '../storage/meta.js'
import { Trouble } from '../words/trouble.js'
import { call } from '../server/request.js'
import { changePerson, currentRow } from './current.js'
import { csrfTokenOf, refusal } from './session.js'

/** @param {string} person @param {string} kid @returns {Promise<CryptoKey | undefined>} */
export function privateKey(person, kid) {
  return withDb(['keys'], 'readonly', (tx) => tx.store.get([person, kid]))
}

/** The server's public key, pinned at the first enrolment. @returns {Promise<{kid: string, jwk: any} | undefined>} */
export function pinnedServer() {
  return readMeta(['server'])
}

/**
 * Make a key for the person just signed in and have the server tie it to them. Done once; called again it
 * finishes what was cut off, and after a lost or revoked key it makes another. Needs signal and a live session.
 * @param {boolean} [anew] whatever was begun, with a new key
 * @returns {Promise<{kid: string}>}
 * @throws {Trouble} `people.nobody`, `people.other_signed_in`, `people.key_not_kept`, `people.not_enrolled`,
 * `people.other_server`, `sync.offline`
 */
export async function enrol(anew = false) {
  const row = await currentRow()
  if (!row) throw new Trouble('people.nobody', { field: 'person', value: '' })
  if (row.kid && row.enrolment && !row.revoked && (await privateKey(row.id, row.kid)) && (await pinnedServer())) return { kid: row.kid }
  const { kid, jwk } = await ownKey(row, anew)
  const key = await privateKey(row.id, kid)
  if (!key) throw new Trouble('people.key_not_kept', { field: 'key', value: kid })
  const nonce = (await call('GET', '/api/nonce')).data?.nonce
  const proof = await makeProof(String(nonce), 'enrol', { kid, privateKey: key })
  const reply = await call('POST', '/api/devices', { cookies: true, json: { jwk, device: deviceName(), proof },
    headers: { 'X-Seamwalk-Csrf': await csrfTokenOf(row) } })
  // Begun once under another's sign-in, it is theirs for good and has signed nothing here.
  if (reply.data?.error?.code === 'key_taken' && !anew) return enrol(true)
  if (reply.status >= 300 || !reply.data?.enrolment) throw refusal('people.not_enrolled', 'device', kid, reply)
  await accept(row.id, kid, reply.data)
  return { kid }
}

/**
 * A server that was set back to a backup may have forgotten this key: its own word of before tells whose it is.
 * @param {{id: string, kid: string | null, enrolment?: string | null}} person @param {CryptoKey} key
 * @returns {Promise<boolean>} whether it knows the key again @throws {Trouble} `sync.offline`
 */
export async function enrolAgain({ id, kid, enrolment }, key) {
  if (!kid || !enrolment) return false
  const nonce = (await call('GET', '/api/nonce')).data?.nonce
  const proof = await makeProof(String(nonce), 'enrol', { kid, privateKey: key })
  const reply = await call('POST', '/api/devices/again', { json: { enrolment, proof } })
  if (reply.status >= 300 || !reply.data?.enrolment) return false
  await accept(id, kid, reply.data)
  return true
}

/** The key begun earlier for this person, or a new one, read back and tried. @param {any} row @param {boolean} anew */
async function ownKey(row, anew) {
  const begun = await readMeta(['enrolling', row.id])
  const ended = row.revoked && begun?.kid === row.kid
  if (begun && !anew && !ended && (await privateKey(row.id, begun.kid))) return begun
  const { privateKey: key, jwk, kid } = await makeKey()
  await withDb(['keys'], 'readwrite', (tx) => tx.store.put(key, [row.id, kid]))
  await writeMeta(['enrolling', row.id], { kid, jwk })
  return { kid, jwk }
}

/** @param {string} person @param {string} kid @param {{enrolment: string, server: {kid: string, jwk: any}}} answer */
async function accept(person, kid, { enrolment, server }) {
  const pinned = (await pinnedServer()) ?? server
  let statement
  try {
    const jws = await parseJws(enrolment, 'seamwalk-statement')
    await verifyJws(jws, pinned.jwk)
    statement = jws.payload
  } catch {
    throw new Trouble('people.other_server', { field: 'server', value: server?.kid ?? '' })
  }
  if (statement.kind !== 'enrolment' || statement.kid !== kid || statement.person.id !== person) {
    throw new Trouble('people.not_enrolled', { field: 'enrolment', value: String(statement.kid) })
  }
  await writeMeta(['server'], { kid: pinned.kid, jwk: pinned.jwk })
  await changePerson(person, { kid, jwk: statement.jwk, enrolment, revoked: false })
}

/** What people will know this phone by: a plain word and the day, no fingerprint of it. */
export function deviceName() {
  const kind = /iPhone|iPad/.test(navigator.userAgent) ? 'iOS' : /Android/.test(navigator.userAgent) ? 'Android' : 'browser'
  return `${kind} ${new Date().toISOString().slice(0, 10)}`
}
