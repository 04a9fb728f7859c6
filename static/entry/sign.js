// Make a signed token from a payload. Do this before opening a database transaction: signing waits, and a
// transaction that is waited in closes itself.

import { encode } from './base64url.js'
import { digestOf } from './digest.js'
import { lowered } from './low.js'
import { checkPlain } from './plain.js'
import { Refused } from './refused.js'

/** @typedef {import('./key.js').SigningKey} SigningKey */

const LARGEST = 64 * 1024

/**
 * An entry. Throws Refused for a payload that the server would refuse for its form as JSON, or over 64 KiB.
 * @param {object} payload @param {SigningKey} key
 */
export async function signEntry(payload, key) {
  return signJws(payload, 'seamwalk-entry', key)
}

/**
 * A compact JWS (RFC 7515) with exactly alg, kid and typ in its header: `{token, digest}`.
 * @param {object} payload @param {string} typ @param {SigningKey} key
 */
export async function signJws(payload, typ, { kid, privateKey }) {
  checkPlain(payload, 'payload')
  const signingInput = `${part({ alg: 'ES256', kid, typ })}.${part(payload)}`
  const message = new TextEncoder().encode(signingInput)
  const algorithm = { name: 'ECDSA', hash: 'SHA-256' }
  const signature = lowered(new Uint8Array(await crypto.subtle.sign(algorithm, privateKey, message)))
  const token = `${signingInput}.${encode(signature)}`
  if (token.length > LARGEST) throw new Refused('too_large', 'entry', token.length)
  return { token, digest: await digestOf(signingInput) }
}

/** @param {object} value */
function part(value) {
  return encode(new TextEncoder().encode(JSON.stringify(value)))
}
