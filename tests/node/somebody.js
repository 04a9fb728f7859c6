// Somebody with a key, who holds this phone.

import { makeKey } from '../../static/entry/key.js'
import { changePerson, setCurrent } from '../../static/people/current.js'
import { withDb } from '../../static/storage/database.js'

/** @param {string} id of the person @returns {Promise<import('../../static/entry/key.js').SigningKey & {jwk: any}>} their key */
export async function somebody(id) {
  const own = await makeKey()
  await withDb(['keys'], 'readwrite', (tx) => tx.store.put(own.privateKey, [id, own.kid]))
  await changePerson(id, { name: 'Ann (invented)', role: 'foreman', kid: own.kid, jwk: own.jwk, enrolment: 'x' })
  await setCurrent(id, false)
  return own
}
