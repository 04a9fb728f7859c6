// What this person's other phones told the office of and never sent. Asked once by every new key, so that a phone whose
// data were erased learns what was on it; and again, once a page, for as long as anything is missing.
//
//   meta ['missing', person] -> {kid: the key that asked, at: ms, phones: [as the office tells of them], seen: [names]}

import { withDb } from '../storage/database.js'
import { readMeta, writeMeta } from '../storage/meta.js'
import { callAs } from '../people/token.js'

/** @typedef {{kid: string, at: number, phones: any[], seen: string[]}} Missing */

/** Keys that asked since this page was loaded. @type {Set<string>} */
const asked = new Set()

/** @param {string} person @returns {Promise<Missing | undefined>} */
function told(person) {
  return readMeta(['missing', person])
}

/** As last told, without what is on this phone: a lost database's work that came back from its second copy was told of
 * under its old key. @param {string} person @returns {Promise<Missing | undefined>} */
export async function missingOf(person) {
  const known = await told(person)
  if (!known?.phones.length) return known
  const range = IDBKeyRange.bound([person], [person, []])
  const [waiting, sent] = await withDb(['outbox', 'receipts'], 'readonly', (tx) => Promise.all(
    [tx.objectStore('outbox').getAllKeys(range), tx.objectStore('receipts').getAllKeys(range)]))
  const here = new Set([...waiting, ...sent].map((/** @type {string[]} */ [, , job, name]) => `${job} ${name}`))
  const phones = known.phones.map((one) => ({ ...one, unsent: { ...one.unsent, items: one.unsent.items.filter((/** @type {any} */ { job, name }) => !here.has(`${job} ${name}`)) } }))
  return { ...known, phones: phones.filter(({ unsent }) => unsent.items.length) }
}

/** The step of the round. @param {any} person */
export async function pullMissing(person) {
  const known = await told(person.id)
  if (asked.has(person.kid) || (known?.kid === person.kid && !known?.phones.length)) return
  await askMissing(person)
}

/** Ask now. @param {any} person @throws {import('../words/trouble.js').Trouble} those of `callAs` */
export async function askMissing(person) {
  const reply = await callAs(person, 'GET', '/api/missing')
  if (!Array.isArray(reply.data?.phones)) return // an older server, or a refusal: asked again by another page
  asked.add(person.kid)
  const seen = (await told(person.id))?.seen ?? []
  await writeMeta(['missing', person.id], { kid: person.kid, at: Date.now(), phones: reply.data.phones, seen })
  window.dispatchEvent(new CustomEvent('seamwalk:missing'))
}

/** The person has read what is missing now: no notice more, until something else is. @param {string} person */
export async function markSeen(person) {
  const known = await told(person)
  if (!known) return
  await writeMeta(['missing', person], { ...known, seen: namesOf(known.phones) })
  window.dispatchEvent(new CustomEvent('seamwalk:missing'))
}

/** @param {any[]} phones @returns {string[]} */
export function namesOf(phones) {
  return phones.flatMap(({ unsent }) => unsent.items.map((/** @type {any} */ { job, name }) => `${job} ${name}`))
}

/** What is missing, and how much of it the person has not read of. @param {Missing | undefined} known */
export function countMissing(known) {
  const names = namesOf(known?.phones ?? [])
  const seen = new Set(known?.seen ?? [])
  return { all: names.length, unread: names.filter((name) => !seen.has(name)).length }
}
