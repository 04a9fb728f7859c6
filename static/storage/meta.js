// Small facts of the phone, each in a row of its own: `['current']`, `['server']`, `['cursor', person]` …

import { withDb } from './database.js'
import { withRoom } from './room.js'

/** @param {any[]} key @returns {Promise<any>} undefined where never set */
export function readMeta(key) {
  return withDb(['meta'], 'readonly', (tx) => tx.store.get(key))
}

/** @param {any[]} key @param {any} value */
export async function writeMeta(key, value) {
  await withRoom('text', () => withDb(['meta'], 'readwrite', (tx) => tx.store.put(value, key)))
}

/** @param {any[]} key */
export async function dropMeta(key) {
  await withDb(['meta'], 'readwrite', (tx) => tx.store.delete(key))
}
