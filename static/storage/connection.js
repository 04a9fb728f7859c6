// The one open connection to the phone's database, dropped whenever it may be dead.

import { openDB } from '../vendor/idb.js'
import { Trouble } from '../words/trouble.js'
import { roomGiven } from './held_room.js'
import { seeRoom } from './reserve.js'
import { NAME, VERSION, upgrade } from './schema.js'

const OPEN_LIMIT = 3000 // ms; an open that does not settle by then never will (seen on phones that slept)

/** @type {Promise<any> | null} */
let opening = null

/** The connection, opened if need be. @returns {Promise<any>} */
export function connection() {
  if (opening) return opening
  const mine = open().catch((fault) => {
    if (opening === mine) opening = null // dropped meanwhile, another may stand in its place
    throw fault
  })
  opening = mine
  return mine
}

let spent = false

/** Some browsers refuse every later write of a connection that met a full disk once. It is read on with: to open another
 * needs room. */
export function spendConnection() {
  spent = true
}

/** @returns {Promise<any>} one that no full disk was met with */
export function connectionToWrite() {
  if (spent) dropConnection()
  return connection()
}

/** Forget the connection: the next call opens a new one. */
export function dropConnection() {
  const old = opening
  opening = null
  spent = false
  old?.then((db) => db.close(), () => {})
}

let count = 0

/** How often this page has opened it: each time it may be another database, where the browser threw the last away. */
export function openings() {
  return count
}

async function open() {
  await roomGiven()
  await seeRoom()
  const db = await opened(VERSION).catch((fault) => {
    if (!(fault instanceof DOMException) || fault.name !== 'VersionError') throw fault
    return opened() // a newer build was here: as it left it
  })
  count += 1
  globalThis.dispatchEvent?.(new Event('seamwalk:opened'))
  return db
}

/** @param {number} [version] as it stands where none is given */
function opened(version) {
  let late = false
  let held = false
  const request = openDB(NAME, version, {
    upgrade,
    blocked: () => { held = true }, // by a window that does not let go; most do a moment later
    blocking: dropConnection, // another tab brings a newer schema: let it pass
    terminated: dropConnection,
  })
  request.then((/** @type {any} */ db) => late && db.close(), () => {})
  return Promise.race([request, new Promise((_, reject) => setTimeout(() => {
    late = true
    reject(held ? new Trouble('storage.held') : new DOMException('the database did not open', 'TimeoutError'))
  }, OPEN_LIMIT))])
}

/** Was the database made by a newer build? Then it is read and sent, and nothing is added. @param {any} db */
export function ofNewerBuild(db) {
  return db.version > VERSION
}

// A page that sleeps with an open connection wakes with a dead one.
if (typeof document !== 'undefined') {
  addEventListener('pagehide', dropConnection)
  document.addEventListener('freeze', dropConnection)
}
