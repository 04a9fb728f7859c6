// Base64url without padding (RFC 7515 section 2), in its one canonical spelling.

import { Refused } from './refused.js'

/** @param {Uint8Array} bytes */
export function encode(bytes) {
  let text = ''
  for (const byte of bytes) text += String.fromCharCode(byte)
  return btoa(text).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '')
}

/**
 * Throws Refused `not_canonical` for padding, foreign characters, an impossible length or spare bits set.
 * @param {string} text @param {string} field
 */
export function decode(text, field) {
  if (!/^[A-Za-z0-9_-]*$/.test(text) || text.length % 4 === 1) throw new Refused('not_canonical', field, text)
  const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'))
  const bytes = Uint8Array.from(binary, (character) => character.charCodeAt(0))
  if (encode(bytes) !== text) throw new Refused('not_canonical', field, text)
  return bytes
}

/** Whether the value is a canonical base64url SHA-256: a digest or a thumbprint. @param {unknown} value */
export function namesSha256(value) {
  if (typeof value !== 'string' || value.length !== 43) return false
  try {
    return decode(value, 'digest').length === 32
  } catch {
    return false
  }
}
