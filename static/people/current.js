// Who holds the phone just now. Only a name kept on the phone: signing in, PINs and networks are elsewhere.

import { withDb } from '../storage/database.js'
import { readMeta, writeMeta } from '../storage/meta.js'
import { withRoom } from '../storage/room.js'
import { Trouble } from '../words/trouble.js'

/** @typedef {{id: string, name: string, role: string, kid: string | null, jwk: any, enrolment: string | null,
 *   pin: any, tries: {wrong: number, until: number}, hidden: boolean, revoked: boolean}} PersonRow */

/** @returns {Promise<PersonRow | null>} null when nobody is, or the phone is locked */
export async function currentRow() {
  const current = await readMeta(['current'])
  if (!current || current.locked) return null
  return (await personRow(current.person)) ?? null
}

/** @returns {Promise<string>} the person's id @throws {Trouble} `people.nobody` */
export async function currentPerson() {
  const row = await currentRow()
  if (!row) throw new Trouble('people.nobody', { field: 'person', value: '' })
  return row.id
}

/** @param {string} person @returns {Promise<PersonRow | undefined>} */
export function personRow(person) {
  return withDb(['people'], 'readonly', (tx) => tx.store.get(person))
}

/** @returns {Promise<PersonRow[]>} */
export function everyPerson() {
  return withDb(['people'], 'readonly', (tx) => tx.store.getAll())
}

/** Change some members of a person's row, made if new. @param {string} person @param {Partial<PersonRow>} change */
export async function changePerson(person, change) {
  const blank = { id: person, name: '', role: '', kid: null, jwk: null, enrolment: null, pin: null, hidden: false, revoked: false,
    tries: { wrong: 0, until: 0 } }
  await withRoom('text', () => withDb(['people'], 'readwrite', async (tx) => {
    const row = await tx.store.get(person)
    await tx.store.put({ ...blank, ...row, ...change })
  }))
}

/** The key of this name was ended: a new sign-in makes another, unless one did meanwhile. @param {string} person @param {string} kid */
export async function noteEnded(person, kid) {
  await withDb(['people'], 'readwrite', async (tx) => {
    const row = await tx.store.get(person)
    if (row?.kid === kid) await tx.store.put({ ...row, revoked: true })
  })
}

/** @param {string | null} person @param {boolean} locked */
export async function setCurrent(person, locked) {
  await writeMeta(['current'], person === null ? null : { person, locked })
  if (typeof window !== 'undefined') window.dispatchEvent(new CustomEvent('seamwalk:person'))
}
