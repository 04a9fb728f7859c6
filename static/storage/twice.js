// Keep what is saved a second time, beside the database and under the database's own name: where that name is another
// one day, the browser has thrown the database away (static/shell/put_back.js).

import { keepCopy } from '../spare/copies.js'
import { withDb } from './database.js'

/** @type {Promise<string> | null} */
let name = null
const made = Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, '0')).join('')

/** The database's name for itself, given once. @returns {Promise<string>} */
export function databaseName() {
  name ??= withDb(['meta'], 'readwrite', async (tx) => {
    const given = await tx.store.get(['name'])
    if (!given) await tx.store.put(made, ['name'])
    return given ?? made
  }).catch((fault) => {
    name = null
    throw fault
  })
  return name
}

/**
 * Nothing hangs on it: what is saved is saved.
 * @param {import('../spare/copies.js').Head} head @param {ArrayBuffer | Uint8Array<ArrayBuffer>} bytes
 * @returns {Promise<boolean>} whether it is kept twice
 */
export async function keepTwice(head, bytes) {
  try {
    return await keepCopy(await databaseName(), head, new Uint8Array(bytes))
  } catch {
    return false
  }
}
