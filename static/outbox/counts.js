// What is only on this phone.

import { withDb } from '../storage/database.js'
import { currentRow } from '../people/current.js'
import { countRows } from './rows.js'

/** @param {string} person @returns {Promise<any[]>} */
export function rowsOf(person) {
  return withDb(['outbox'], 'readonly', (tx) => tx.store.getAll(IDBKeyRange.bound([person], [person, []])))
}

/** @returns {Promise<any[]>} */
export function everyRow() {
  return withDb(['outbox'], 'readonly', (tx) => tx.store.getAll())
}

/**
 * Of the current person; `others` counts items of other people on this phone, which send as well.
 * @returns {Promise<{entries: number, photos: number, oldest: string | null, refused: number, damaged: number,
 *   bytes: number, others: number, oldestOfAll: string | null}>} `oldest` is the device time of the oldest item,
 *   `oldestOfAll` that of anybody's that can still be sent
 */
export async function counts() {
  const [person, rows] = await Promise.all([currentRow(), everyRow()])
  const own = rows.filter((row) => row.person === person?.id)
  const sendable = rows.filter(({ state }) => state !== 'held' && state !== 'damaged')
  return { ...countRows(own), others: rows.length - own.length, oldestOfAll: countRows(sendable).oldest }
}
