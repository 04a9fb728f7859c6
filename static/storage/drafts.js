// What is not yet signed, per person. A draft is data only: never a File, a Blob or a key.
//
// A draft that the storage does not take stays in memory, is what the next screen finds, and is offered again until
// it is kept. Of several changes under way the newest is written, whichever of them runs, or runs once more, last.

import { Trouble } from '../words/trouble.js'
import { withDb } from './database.js'
import { withRoom } from './room.js'
import { noteStorage } from './standing.js'

const AGAIN = 3000 // ms
const NOTES = /^ticks\// // on tomorrow's list: kept for ever, and nothing waits to be finished there

/** @typedef {{person: string, key: string, value?: any, at?: number}} Draft without a value: dropped */

/** The newest of each draft touched by this page. @type {Map<string, Draft>} */
const newest = new Map()

/** Those of them that are not kept yet. @type {Set<string>} */
const unkept = new Set()

/** @type {ReturnType<typeof setTimeout> | undefined} */
let timer

/** @param {string} person @param {string} key @param {any} value any structured-cloneable data
 * @throws {Trouble} `outbox.disk_full`, `outbox.storage_stopped`: it stays in memory and is tried again */
export function saveDraft(person, key, value) {
  return keep({ person, key, value, at: Date.now() })
}

/** @param {string} person @param {string} key @returns {Promise<any>} the value, or null where there is none */
export async function loadDraft(person, key) {
  const name = named({ person, key })
  if (unkept.has(name)) return newest.get(name)?.value ?? null
  const row = await withDb(['drafts'], 'readonly', (tx) => tx.store.get([person, key]))
  return row ? row.value : null
}

/** @param {string} person @param {string} key */
export function dropDraft(person, key) {
  return keep({ person, key })
}

/** The draft went in a transaction of somebody else's. @param {string} person @param {string} key */
export function draftGone(person, key) {
  newest.set(named({ person, key }), { person, key })
  unkept.delete(named({ person, key }))
  if (!unkept.size) noteStorage('drafts', null)
}

/** What they began, notes not counted. @param {string} person @returns {Promise<{key: string, at: number}[]>} */
export async function draftsOf(person) {
  const rows = await withDb(['drafts'], 'readonly', (tx) => tx.store.getAll(IDBKeyRange.bound([person], [person, []])))
  return rows.filter((/** @type {any} */ row) => !NOTES.test(row.key)).map((/** @type {any} */ row) => ({ key: row.key, at: row.at }))
}

/** How many drafts of anybody are begun on this phone, notes not counted unless the storage has not taken them. */
export async function openDrafts() {
  const keys = await withDb(['drafts'], 'readonly', (tx) => tx.store.getAllKeys())
  return unkept.size + keys.filter((/** @type {[string, string]} */ [, key]) => !NOTES.test(key)).length
}

/** @param {Draft} draft */
function named({ person, key }) {
  return JSON.stringify([person, key])
}

/** @param {Draft} draft */
async function keep(draft) {
  const name = named(draft)
  newest.set(name, draft)
  unkept.add(name)
  await write(name)
}

/** @param {string} name */
async function write(name) {
  /** @type {any} */
  let draft
  try {
    await withRoom('text', () => withDb(['drafts'], 'readwrite', (tx) => {
      draft = newest.get(name)
      return 'value' in draft ? tx.store.put(draft) : tx.store.delete([draft.person, draft.key])
    }))
  } catch (fault) {
    if (fault instanceof Trouble) noteStorage('drafts', fault.code)
    timer ??= setTimeout(again, AGAIN)
    throw fault
  }
  if (newest.get(name) === draft) unkept.delete(name)
  if (!unkept.size) noteStorage('drafts', null)
}

async function again() {
  timer = undefined
  for (const name of [...unkept]) await write(name).catch(() => {})
}
