// Read a token that was signed elsewhere, and check its signature: the twin of inspect_app/entry/jws.py.

import { decode, encode, namesSha256 } from './base64url.js'
import { digestOf } from './digest.js'
import { importPublic, thumbprint } from './key.js'
import { isLow } from './low.js'
import { Refused } from './refused.js'
import { parseStrict } from './strict.js'

/** @typedef {import('./key.js').PublicJwk} PublicJwk */
/**
 * @typedef {{token: string, kid: string, payload: Record<string, any>, signingInput: string,
 *   signature: Uint8Array, digest: string}} Jws
 */

const LARGEST = 64 * 1024

/**
 * Take a token apart and check its form; the signature is not verified, see `verifyJws`. Throws Refused.
 * @param {string} token @param {string} typ
 * @returns {Promise<Jws>}
 */
export async function parseJws(token, typ) {
  if (token.length > LARGEST) throw new Refused('too_large', 'entry', token.length)
  const parts = token.split('.')
  if (parts.length !== 3) throw new Refused('malformed', 'entry', token)
  const header = parseStrict(decode(parts[0], 'header'), 'header')
  checkHeader(header, typ)
  const payload = parseStrict(decode(parts[1], 'payload'), 'payload')
  const signature = decode(parts[2], 'signature')
  if (signature.length !== 64) throw new Refused('malformed', 'signature', parts[2])
  const signingInput = `${parts[0]}.${parts[1]}`
  return { token, kid: header.kid, payload, signingInput, signature, digest: await digestOf(signingInput) }
}

/** An entry made on another phone, as the server hands it on. @param {string} token */
export async function parseEntry(token) {
  return parseJws(token, 'seamwalk-entry')
}

/**
 * Throws Refused `unknown_key` (the token names another key), `bad_signature` or `high_s`.
 * @param {Jws} jws @param {PublicJwk} jwk
 */
export async function verifyJws(jws, jwk) {
  if ((await thumbprint(jwk)) !== jws.kid) throw new Refused('unknown_key', 'header.kid', jws.kid)
  await verifyByKey(jws, await importPublic(jwk))
}

/** As verifyJws, by a key already read, of whose name the caller is sure. @param {Jws} jws @param {CryptoKey} key */
export async function verifyByKey(jws, key) {
  const message = new TextEncoder().encode(jws.signingInput)
  const signature = /** @type {BufferSource} */ (jws.signature)
  const good = await crypto.subtle.verify({ name: 'ECDSA', hash: 'SHA-256' }, key, signature, message)
  if (!good) throw new Refused('bad_signature', 'signature', encode(jws.signature))
  if (!isLow(jws.signature)) throw new Refused('high_s', 'signature', encode(jws.signature))
}

/** @param {Record<string, any>} header @param {string} typ */
function checkHeader(header, typ) {
  if (header.alg !== 'ES256') throw new Refused('bad_algorithm', 'header.alg', header.alg)
  if (header.typ !== typ) throw new Refused('wrong_type', 'header.typ', header.typ)
  if (!namesSha256(header.kid)) throw new Refused('bad_header', 'header.kid', header.kid)
  for (const name of Object.keys(header)) {
    if (!['alg', 'kid', 'typ'].includes(name)) throw new Refused('bad_header', 'header', name)
  }
}
