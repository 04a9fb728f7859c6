// The one open connection to the phone's database, dropped whenever it may be dead.

import { openDB } from '../vendor/idb.js'
import { NAME, VERSION, upgrade } from './schema.js'

const OPEN_LIMIT = 3000 // ms; an open that does not settle by then never will (seen on phones that slept)

/** @type {Promise<any> | null} */
let opening = null

/** The connection, opened if need be. @returns {Promise<any>} */
export function connection() {
  opening ??= open().catch((fault) => {
    opening = null
    throw fault
  })
  return opening
}

/** Forget the connection: the next call opens a new one. */
export function dropConnection() {
  const old = opening
  opening = null
  old?.then((db) => db.close(), () => {})
}

async function open() {
  let late = false
  const request = openDB(NAME, VERSION, {
    upgrade,
    blocking: dropConnection, // another tab brings a newer schema: let it pass
    terminated: dropConnection,
  })
  request.then((/** @type {any} */ db) => late && db.close(), () => {})
  return Promise.race([request, new Promise((_, reject) => setTimeout(() => {
    late = true
    reject(new DOMException('the database did not open', 'TimeoutError'))
  }, OPEN_LIMIT))])
}

// A page that sleeps with an open connection wakes with a dead one.
if (typeof document !== 'undefined') {
  addEventListener('pagehide', dropConnection)
  document.addEventListener('freeze', dropConnection)
}
