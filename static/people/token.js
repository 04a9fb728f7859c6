// Delivery is authorised by the device key: the phone signs the server's nonce and gets a token for an hour. An
// expired sign-in strands nothing.

import { makeProof } from '../entry/proof.js'
import { noteEnded } from './current.js'
import { enrolAgain, privateKey } from './device.js'
import { noteRestorations } from './restorations.js'
import { Trouble } from '../words/trouble.js'
import { call } from '../server/request.js'

const SPARE = 60_000 // ms before its end that a token is no longer used

/** @type {Map<string, {token: string, scope: string, until: number}>} kid -> token */
const held = new Map()

/**
 * @param {{id: string, kid: string | null, enrolment?: string | null}} person
 * @param {boolean} [forgotten] the server has just been told again whose the key is
 * @returns {Promise<{token: string, scope: string}>}
 * @throws {Trouble} `people.no_key`, `sync.key_refused` with the server's words, those of `call`
 */
export async function deliveryToken(person, forgotten = false) {
  const kid = person.kid ?? ''
  const known = held.get(kid)
  if (known && known.until > performance.now()) return known
  const key = kid ? await privateKey(person.id, kid) : undefined
  if (!key) throw new Trouble('people.no_key', { field: 'key', value: person.id })
  const nonce = (await call('GET', '/api/nonce')).data?.nonce
  if (typeof nonce !== 'string') throw new Trouble('sync.not_our_server', { field: 'server', value: '/api/nonce' })
  const proof = await makeProof(nonce, 'deliver', { kid, privateKey: key })
  const reply = await call('POST', '/api/delivery', { json: { proof } })
  if (typeof reply.data?.token !== 'string') {
    const error = reply.data?.error ?? {}
    if (error.code === 'unknown_key' && !forgotten && (await enrolAgain(person, key))) return deliveryToken(person, true)
    throw new Trouble('sync.key_refused', { field: 'key', value: kid, status: reply.status },
      { message: error.message, wayOut: error.way_out })
  }
  const { token, scope = 'full', expires_in: seconds = 3600 } = reply.data
  await noteRestorations(reply.data.restorations)
  const fresh = { token, scope, until: performance.now() + seconds * 1000 - SPARE }
  held.set(kid, fresh)
  if (scope !== 'full') await noteEnded(person.id, kid)
  return fresh
}

/** A call with the person's token, with a new one once where the server no longer takes the old.
 * @param {any} person @param {string} method @param {string} path @param {any} [options] as of `call` */
export async function callAs(person, method, path, options = {}) {
  const { token } = await deliveryToken(person)
  const reply = await call(method, path, { ...options, token })
  const ended = reply.status === 403 && reply.data?.error?.code === 'key_revoked'
  if (reply.status !== 401 && !ended) return reply
  held.delete(person.kid)
  const next = await deliveryToken(person) // of a key that was ended it says so: what is asked then waits for a new key
  return ended ? reply : call(method, path, { ...options, token: next.token })
}
