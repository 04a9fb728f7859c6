// SHA-256 as entries are named by it: base64url, 43 characters.

import { encode } from './base64url.js'

/** @param {string} text ASCII: a signing input, or canonical JSON */
export async function digestOf(text) {
  const bytes = new TextEncoder().encode(text)
  return encode(new Uint8Array(await crypto.subtle.digest('SHA-256', bytes)))
}
