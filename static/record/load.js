// A job's record on the phone: stored entries folded by the rulebook, never by this code.

import { payloadOf } from '../entry/payload.js'
import { currentRow, everyPerson } from '../people/current.js'
import { ask } from '../rules/ask.js'
import { Trouble } from '../words/trouble.js'
import { withDb } from '../storage/database.js'
import { readMeta } from '../storage/meta.js'

/** @typedef {{id: string, name: string, people: {id: string, name: string, role: string, kids: string[]}[], partial?: boolean, areas?: string[] | null, overdue?: number}} Job */

/** Jobs of the current person, as last told by the server. @returns {Promise<Job[]>} */
export async function jobs() {
  const person = await currentRow()
  return person ? ((await readMeta(['jobs', person.id])) ?? []) : []
}

/** Whether the current person sees only some of this job. @param {string} job */
export async function seesPart(job) {
  return (await jobs()).find((one) => one.id === job)?.partial === true
}

/** The areas that the current person sees whole; null for all. @param {string} job @returns {Promise<string[] | null>} */
export async function areasGiven(job) {
  return (await jobs()).find((one) => one.id === job)?.areas ?? null
}

/** Records folded lately, or being folded: a job's entries only ever grow in number. @type {Map<string, {key: string, record: Promise<any>}>} */
const folded = new Map()

/**
 * @param {string} job @returns {Promise<any>} the record of `fold`
 * @throws {Trouble} `people.nobody`, or what the rulebook refuses as `reason.CODE`
 */
export async function jobRecord(job) {
  const person = await currentRow()
  if (!person) throw new Trouble('people.nobody', { field: 'person', value: '' })
  const rows = await withDb(['entries'], 'readonly', (tx) => tx.store.index('job').getAll([person.id, job]))
  const people = await peopleOf(job)
  const partial = await seesPart(job)
  const areas = await areasGiven(job)
  const key = JSON.stringify([person.id, job, rows.length, people, partial, areas])
  const before = folded.get(job)
  if (before?.key === key) return before.record
  const entries = rows.map((/** @type {any} */ { digest, kid, token }) => ({ digest, kid, payload: payloadOf(token) }))
  const record = ask({ call: 'fold', entries, people, partial, areas })
  folded.set(job, { key, record })
  record.catch(() => { if (folded.get(job)?.record === record) folded.delete(job) })
  return record
}

/**
 * Who may have signed: the job's people as the server knows them, and the keys made on this phone since.
 * @param {string} job
 */
async function peopleOf(job) {
  /** @type {Record<string, {name: string, role: string, kids: string[]}>} */
  const people = {}
  for (const { id, name, role, kids } of (await jobs()).find((one) => one.id === job)?.people ?? []) {
    people[id] = { name, role, kids: [...kids] }
  }
  for (const { id, name, role, kid } of await everyPerson()) {
    if (!kid || people[id]?.kids.includes(kid)) continue
    const known = people[id] ?? { name, role, kids: [] }
    people[id] = { ...known, kids: [...known.kids, kid] }
  }
  return people
}

/** What an entry kept on this phone says. @param {string} digest @returns {Promise<any>} its body; null where it has not come yet */
export async function entryBody(digest) {
  const person = await currentRow()
  const row = person && await withDb(['entries'], 'readonly', (tx) => tx.store.get([person.id, digest]))
  return row ? payloadOf(row.token).body : null
}

/** A definition kept on this phone. @param {string} digest @returns {Promise<any>} null where it has not come yet */
export async function definition(digest) {
  const text = await readMeta(['definition', digest])
  return text === undefined ? null : JSON.parse(text)
}

/**
 * The definitions a job pins, with their digests; those that have not come yet are left out.
 * @param {string} job @returns {Promise<any[]>} compiled definitions, each with `digest`
 */
export async function definitionsOf(job) {
  const pinned = (await jobRecord(job)).job?.definitions ?? {}
  const found = []
  for (const id of Object.keys(pinned).sort()) {
    const one = await definition(pinned[id])
    if (one) found.push({ ...one, digest: pinned[id] })
  }
  return found
}
