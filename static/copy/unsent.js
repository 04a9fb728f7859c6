// Everything that is only on this phone, whoever recorded it, one thing after the other: entries first, then photos. What
// is damaged or gone is named with its reason and keeps nothing else back.

import { digestOf } from '../entry/digest.js'
import { everyRow } from '../outbox/counts.js'
import { bySequence } from '../outbox/rows.js'
import { everyPerson } from '../people/current.js'
import { readWhole } from '../photo/rows.js'
import { withDb } from '../storage/database.js'
import { Trouble } from '../words/trouble.js'

/** @typedef {{what: 'entry' | 'photo', name: string, job: string, size: number, person: string, kind: string, at: string,
 *   state: string, damage?: string}} Item as the list tells it */

/**
 * Each thing with its bytes, or with `damage` and without. One photo is in memory at a time.
 * @returns {AsyncGenerator<{item: Item, bytes: Uint8Array<ArrayBuffer> | null}>}
 * @throws {Trouble} `outbox.storage_stopped`
 */
export async function* unsentThings() {
  const rows = (await everyRow()).sort(bySequence)
  const owners = (await everyPerson()).map(({ id }) => id)
  const told = new Set()
  for (const what of ['entry', 'photo']) {
    for (const row of rows) {
      const path = pathOf(row)
      if (row.what !== what || told.has(path)) continue // the same thing, taken along by two people
      told.add(path)
      const { name, job, size, person, kind, at, state } = row
      const found = await soundest(what === 'entry' ? entryBytes : photoBytes, [person, ...owners.filter((id) => id !== person)], name)
      const item = { what: row.what, name, job, size, person, kind, at, state }
      yield typeof found === 'string' ? { item: { ...item, damage: found }, bytes: null } : { item, bytes: found }
    }
  }
}

/**
 * The first whole one of what several people on this phone may hold; else what is wrong with the one that is here.
 * @param {(owner: string, name: string) => Promise<Uint8Array<ArrayBuffer> | string>} read @param {string[]} owners @param {string} name
 */
async function soundest(read, owners, name) {
  let wrong = ''
  for (const owner of owners) {
    const found = await read(owner, name)
    if (typeof found !== 'string') return found
    if (!wrong.endsWith('damaged')) wrong = found
  }
  return wrong
}

/** Where a thing stands in the copy. @param {{what: string, job: string, name: string}} item */
export function pathOf({ what, job, name }) {
  return what === 'entry' ? `entries/${name}` : `photos/${job}/${name}`
}

/** @param {string} owner @param {string} name @returns {Promise<Uint8Array<ArrayBuffer> | string>} what is wrong, where something is */
async function entryBytes(owner, name) {
  const token = (await withDb(['entries'], 'readonly', (tx) => tx.store.get([owner, name])))?.token
  if (typeof token !== 'string') return 'entry_missing'
  const whole = (await digestOf(token.slice(0, token.lastIndexOf('.')))) === name
  return whole ? new TextEncoder().encode(token) : 'entry_damaged'
}

/** @param {string} owner @param {string} name @returns {Promise<Uint8Array<ArrayBuffer> | string>} */
async function photoBytes(owner, name) {
  const photo = await withDb(['photos'], 'readonly', (tx) => tx.store.get([owner, name]))
  if (!photo) return 'photo_missing'
  try {
    return await readWhole(photo)
  } catch (fault) {
    if (!(fault instanceof Trouble) || fault.code !== 'outbox.photo_damaged') throw fault
    return 'photo_damaged'
  }
}
