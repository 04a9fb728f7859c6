// People on this phone: sign in once with signal, then switch by PIN without it. Work is authorised by each
// person's device key, so nothing here ever deletes: signing out hides, an expired session changes nothing.

import { Trouble } from '../words/trouble.js'
import { call } from '../server/request.js'
import { changePerson, currentRow, everyPerson, personRow, setCurrent } from './current.js'
import { isPin, pinMatches, sealPin, waitAfter, waitLeft } from './pin.js'

/** @typedef {{id: string, name: string, role: string, kid: string | null, pin: boolean}} Person */

/** @param {any} row @returns {Person} */
function shown(row) {
  return { id: row.id, name: row.name, role: row.role, kid: row.kid, pin: row.pin !== null }
}

/**
 * Sign in with signal. The person becomes the current one; a device key comes with `enrol()`.
 * @param {string} login @param {string} password @returns {Promise<Person>}
 * @throws {Trouble} `people.not_signed_in` with the server's words, `sync.offline`, `sync.not_our_server`
 */
export async function signIn(login, password) {
  const reply = await call('POST', '/api/session', { cookies: true, json: { login, password },
    headers: { 'X-Seamwalk-Csrf': await csrfToken(true) } })
  if (reply.status >= 300 || !reply.data?.person) throw refusal('people.not_signed_in', 'login', login, reply)
  return begun(reply.data)
}

/** The session has begun, whatever it was opened by: its person becomes the current one.
 * @param {{person: {id: string, name: string, role: string}, csrf: string}} session @returns {Promise<Person>} */
export async function begun({ person, csrf: token }) {
  csrf = String(token ?? '')
  await changePerson(person.id, { name: person.name, role: person.role, hidden: false, tries: { wrong: 0, until: 0 } })
  await setCurrent(person.id, false)
  return shown(await personRow(person.id))
}

let csrf = ''

/** The token that the next changing call of this session must carry. @param {boolean} [anew] asked for again: a session may have ended since */
export async function csrfToken(anew = false) {
  if (!csrf || anew) await askSession()
  return csrf
}

/**
 * As `csrfToken`, of a session that is this person's: another who signed in meanwhile would be given what is theirs.
 * Whoever signs in after this makes the token a stranger's, which the server refuses.
 * @param {{id: string, name: string}} person @throws {Trouble} `people.other_signed_in`
 */
export async function csrfTokenOf({ id, name }) {
  const { person, token } = await askSession()
  if (person && person.id !== id) throw new Trouble('people.other_signed_in', { field: 'person', value: person.name, name })
  return token
}

async function askSession() {
  const { data } = await call('GET', '/api/session', { cookies: true })
  csrf = String(data?.csrf ?? '')
  return { person: data?.person, token: csrf }
}

/** A refusal in the server's words. @param {string} code @param {string} field @param {string} value @param {any} reply */
export function refusal(code, field, value, reply) {
  const error = reply.data?.error ?? {}
  return new Trouble(code, { field, value, status: reply.status }, { message: error.message, wayOut: error.way_out })
}

/** People who have signed in on this phone and did not sign out. @returns {Promise<Person[]>} */
export async function phonePeople() {
  return (await everyPerson()).filter((row) => !row.hidden).map(shown)
}

/** @returns {Promise<Person | null>} null when nobody is, or the phone is locked */
export async function current() {
  const row = await currentRow()
  return row && shown(row)
}

/** Set or change the current person's PIN. @param {string} pin @throws {Trouble} `people.pin_form`, `people.nobody` */
export async function setPin(pin) {
  const row = await currentRow()
  if (!row) throw new Trouble('people.nobody', { field: 'person', value: '' })
  if (!isPin(pin)) throw new Trouble('people.pin_form', { field: 'pin', value: '•'.repeat(pin.length) })
  await changePerson(row.id, { pin: await sealPin(pin), tries: { wrong: 0, until: 0 } })
}

/**
 * Switch to a person, without a network. Somebody who set no PIN opens without one.
 * @param {string} person @param {string} pin @returns {Promise<Person>}
 * @throws {Trouble} `people.unknown`, `people.wrong_pin`, `people.wait` with `seconds`
 */
export async function unlock(person, pin) {
  const row = await personRow(person)
  if (!row || row.hidden) throw new Trouble('people.unknown', { field: 'person', value: person })
  const left = waitLeft(row.tries, Date.now())
  if (left > 0) throw new Trouble('people.wait', { field: 'pin', value: '', seconds: Math.ceil(left / 1000) })
  if (row.pin && !(await pinMatches(pin, row.pin))) {
    const wrong = row.tries.wrong + 1
    const wait = waitAfter(wrong)
    await changePerson(person, { tries: { wrong, until: Date.now() + wait } })
    throw new Trouble(wait ? 'people.wait' : 'people.wrong_pin', { field: 'pin', value: '', seconds: wait / 1000 })
  }
  if (row.tries.wrong) await changePerson(person, { tries: { wrong: 0, until: 0 } })
  await setCurrent(person, false)
  return shown(row)
}

/** Lock the phone: everything stays, and still sends. */
export async function lock() {
  const row = await currentRow()
  if (row) await setCurrent(row.id, true)
}

/** Sign the current person out. Unsent work is hidden, kept, and still sends under its author's name; how much of
 * it there is, `counts()` of the outbox tells. */
export async function signOut() {
  const row = await currentRow()
  if (!row) return
  await changePerson(row.id, { hidden: true })
  await setCurrent(null, false)
  try {
    await call('DELETE', '/api/session', { cookies: true, headers: { 'X-Seamwalk-Csrf': await csrfToken() } })
  } catch {
    // without signal the cookie simply expires; it authorises no delivery
  }
  csrf = ''
}
