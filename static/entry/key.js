// The device's key: P-256, made here, its private half never readable, not even by this page.

import { namesSha256 } from './base64url.js'
import { digestOf } from './digest.js'
import { Refused } from './refused.js'

/** @typedef {{kty: string, crv: string, x: string, y: string}} PublicJwk */
/** What signing needs. @typedef {{kid: string, privateKey: CryptoKey}} SigningKey */

const P256 = { name: 'ECDSA', namedCurve: 'P-256' }

/** A fresh key pair: `{privateKey, publicKey, jwk, kid}`. Store the CryptoKey in a row of its own. */
export async function makeKey() {
  const pair = await crypto.subtle.generateKey(P256, false, ['sign', 'verify'])
  const jwk = await publicJwk(pair.publicKey)
  return { privateKey: pair.privateKey, publicKey: pair.publicKey, jwk, kid: await thumbprint(jwk) }
}

/** Exactly kty, crv, x, y: what the browser adds (ext, key_ops) stays here. @param {CryptoKey} publicKey */
export async function publicJwk(publicKey) {
  const { kty, crv, x, y } = await crypto.subtle.exportKey('jwk', publicKey)
  return /** @type {PublicJwk} */ ({ kty, crv, x, y })
}

/** RFC 7638: SHA-256 of the required members in order, without spaces. @param {PublicJwk} jwk */
export async function thumbprint({ kty, crv, x, y }) {
  return digestOf(JSON.stringify({ crv, kty, x, y }))
}

/** Throws Refused `bad_key` for anything but a public P-256 key. @param {PublicJwk} jwk */
export async function importPublic(jwk) {
  const { kty, crv, x, y } = jwk
  for (const name of /** @type {const} */ (['x', 'y'])) {
    if (!namesSha256(jwk[name])) throw new Refused('bad_key', `jwk.${name}`, jwk[name])
  }
  try {
    return await crypto.subtle.importKey('jwk', { kty, crv, x, y }, P256, true, ['verify'])
  } catch {
    throw new Refused('bad_key', 'jwk.y', jwk.y)
  }
}
