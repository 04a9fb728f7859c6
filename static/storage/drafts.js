// What is not yet signed, per person. A draft is data only: never a File, a Blob or a key.

import { withDb } from './database.js'

/** @param {string} person @param {string} key @param {any} value any structured-cloneable data */
export async function saveDraft(person, key, value) {
  const row = { person, key, value, at: Date.now() }
  await withDb(['drafts'], 'readwrite', (tx) => tx.store.put(row))
}

/** @param {string} person @param {string} key @returns {Promise<any>} the value, or null where there is none */
export async function loadDraft(person, key) {
  const row = await withDb(['drafts'], 'readonly', (tx) => tx.store.get([person, key]))
  return row ? row.value : null
}

/** @param {string} person @param {string} key */
export async function dropDraft(person, key) {
  await withDb(['drafts'], 'readwrite', (tx) => tx.store.delete([person, key]))
}

/** @param {string} person @returns {Promise<{key: string, at: number}[]>} */
export async function draftsOf(person) {
  const rows = await withDb(['drafts'], 'readonly', (tx) => tx.store.getAll(IDBKeyRange.bound([person], [person, []])))
  return rows.map((/** @type {any} */ row) => ({ key: row.key, at: row.at }))
}

/** How many drafts of anybody are open on this phone. */
export function openDrafts() {
  return withDb(['drafts'], 'readonly', (tx) => tx.store.count())
}
