// Keep what is saved a second time, beside the database and under the database's own name: where that name is another
// one day, the browser has thrown the database away (static/shell/put_back.js).

import { keepCopy, mayCopy } from '../spare/copies.js'
import { ballastWhole } from './ballast.js'
import { openings } from './connection.js'
import { withDb } from './database.js'

/** @type {{opening: number, name: Promise<string>} | null} */
let known = null

/** The database's name for itself, given once. @returns {Promise<string>} */
export function databaseName() {
  if (known?.opening === openings()) return known.name
  const mine = { opening: openings(), name: readOrGive() }
  known = mine
  mine.name.catch(() => { if (known === mine) known = null })
  return mine.name
}

/** Read first: to give one is a write, which a full disk may have no room for. */
async function readOrGive() {
  const given = await withDb(['meta'], 'readonly', (tx) => tx.store.get(['name']))
  if (given) return given
  const made = Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, '0')).join('')
  return withDb(['meta'], 'readwrite', async (tx) => {
    const faster = await tx.store.get(['name'])
    if (!faster) await tx.store.put(made, ['name'])
    return faster ?? made
  })
}

/**
 * Nothing hangs on it: what is saved is saved.
 * @param {import('../spare/copies.js').Head} head @param {ArrayBuffer | Uint8Array<ArrayBuffer>} bytes
 * @returns {Promise<boolean>} whether it is kept twice
 */
export async function keepTwice(head, bytes) {
  try {
    return (await hasRoom(head.what)) && await keepCopy(await databaseName(), head, new Uint8Array(bytes))
  } catch {
    return false
  }
}

/** Is it worth reading a thing for its second copy? @param {string} what @returns {Promise<boolean>} */
export async function mayKeepTwice(what) {
  return (await mayCopy(what)) && hasRoom(what)
}

/** Photos only while the ballast is whole: their copies would take the room that a full disk was just given. @param {string} what */
async function hasRoom(what) {
  return what !== 'photo' || ballastWhole()
}
