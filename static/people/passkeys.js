// Passkeys: a sign-in by finger, face or the phone's own lock instead of the password. The browser keeps the key and
// shows its own words; here only bytes are turned into base64url and back.

import { decode, encode } from '../entry/base64url.js'
import { Trouble } from '../words/trouble.js'
import { call } from '../server/request.js'
import { currentRow } from './current.js'
import { deviceName } from './device.js'
import { begun, csrfToken, refusal } from './session.js'

/** @typedef {{id: string, name: string, added_at: string, used_at: string | null}} Passkey */

/** Whether this browser has passkeys at this address: none has them without HTTPS, nor for a bare number. */
export function hasPasskeys() {
  return isSecureContext && 'PublicKeyCredential' in window && !/^[\d.]+$|^\[/.test(location.hostname)
}

/**
 * Sign in, with signal, by a passkey the person picks. As after `signIn`, the device key comes with `enrol()`.
 * @throws {Trouble} `passkey.cancelled`, `passkey.failed`, `passkey.refused` with the server's words, those of `call`
 */
export async function signInWithPasskey() {
  const csrf = await csrfToken(true)
  const { options } = (await post('/sign-in/options', {}, csrf)).data
  const credential = await asked(() => navigator.credentials.get({ publicKey: { ...options, challenge: decode(options.challenge, 'challenge'),
    allowCredentials: (options.allowCredentials ?? []).map(bytesOf) } }))
  const { response } = credential
  const reply = await post('/sign-in', { credential: { ...named(credential), response: {
    clientDataJSON: text(response.clientDataJSON), authenticatorData: text(response.authenticatorData),
    signature: text(response.signature), userHandle: response.userHandle && text(response.userHandle) } } }, csrf)
  return begun(reply.data)
}

/** Make a passkey for who holds the phone and is signed in. @returns {Promise<Passkey>} @throws {Trouble} as above, and `passkey.here_already` */
export async function addPasskey() {
  const row = await currentRow()
  if (!row) throw new Trouble('people.nobody', { field: 'person', value: '' })
  const csrf = await csrfToken(true)
  const { options } = (await post('/options', { person: row.id }, csrf)).data
  const credential = await asked(() => navigator.credentials.create({ publicKey: { ...options, challenge: decode(options.challenge, 'challenge'),
    user: { ...options.user, id: decode(options.user.id, 'user') }, excludeCredentials: (options.excludeCredentials ?? []).map(bytesOf) } }))
  const { response } = credential
  return (await post('', { name: deviceName(), credential: { ...named(credential), response: {
    clientDataJSON: text(response.clientDataJSON), attestationObject: text(response.attestationObject) } } }, csrf)).data
}

/** Those of who holds the phone; null where the session ended or is somebody else's. @returns {Promise<Passkey[] | null>} */
export async function ownPasskeys() {
  const reply = await call('GET', '/api/passkeys', { cookies: true })
  return reply.status === 200 && reply.data.person === (await currentRow())?.id ? reply.data.passkeys : null
}

/** @param {string} id */
export async function removePasskey(id) {
  const reply = await call('DELETE', `/api/passkeys/${id}`, { cookies: true, headers: { 'X-Seamwalk-Csrf': await csrfToken(true) } })
  if (reply.status >= 300) throw refusal('passkey.refused', 'passkey', id, reply)
}

/** @param {string} path @param {any} json @param {string} csrf */
async function post(path, json, csrf) {
  const reply = await call('POST', `/api/passkeys${path}`, { cookies: true, json, headers: { 'X-Seamwalk-Csrf': csrf } })
  if (reply.status >= 300 || !reply.data) throw refusal('passkey.refused', 'passkey', '', reply)
  return reply
}

/** @param {() => Promise<any>} ask @returns {Promise<any>} */
async function asked(ask) {
  try {
    const credential = await ask()
    if (credential) return credential
  } catch (fault) {
    const { name, message } = /** @type {any} */ (fault)
    if (name === 'InvalidStateError') throw new Trouble('passkey.here_already', { field: 'passkey', value: '' })
    if (name !== 'NotAllowedError' && name !== 'AbortError') throw new Trouble('passkey.failed', { field: 'passkey', value: '', reason: message })
  }
  throw new Trouble('passkey.cancelled', { field: 'passkey', value: '' })
}

/** @param {any} one */
function bytesOf(one) {
  return { ...one, id: decode(one.id, 'passkey') }
}

/** @param {any} credential */
function named(credential) {
  return { id: credential.id, rawId: text(credential.rawId), type: credential.type }
}

/** @param {ArrayBuffer} bytes */
function text(bytes) {
  return encode(new Uint8Array(bytes))
}
