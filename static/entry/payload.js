// What a stored entry says: its form and signature were checked when it was signed or came.

import { decode } from './base64url.js'

/** @param {string} token @returns {any} */
export function payloadOf(token) {
  return JSON.parse(new TextDecoder().decode(decode(token.split('.')[1], 'payload')))
}
