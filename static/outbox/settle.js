// Changes of an outbox row's state. Only a verified receipt takes a row away; every other answer keeps it.

import { verifyReceipt } from '../entry/receipt.js'
import { Refused } from '../entry/refused.js'
import { withDb } from '../storage/database.js'
import { withRoom } from '../storage/room.js'

/**
 * The receipt's payload, when the pinned server key signed it for exactly this thing.
 * @param {unknown} token @param {{jwk: any}} server
 * @param {{what: string, name: string, size: number, job: string}} row of the outbox
 * @returns {Promise<any>} null for anything else: none, forged, of another server, for another thing
 */
export async function verifiedReceipt(token, server, { what, name, size, job }) {
  try {
    const expected = what === 'photo' ? { job, photo: name, size } : { job, entry: name }
    return await verifyReceipt(token, server.jwk, expected)
  } catch (fault) {
    if (fault instanceof Refused) return null
    throw fault
  }
}

/** Keep verified receipts and take their rows away, in one transaction. @param {{row: any, token: string}[]} settled */
export async function settle(settled) {
  if (!settled.length) return
  const at = Date.now()
  await withRoom('text', () => withDb(['outbox', 'receipts'], 'readwrite', async (tx) => {
    for (const { row: { person, what, job, name }, token } of settled) {
      await tx.objectStore('receipts').put({ person, what, job, name, token, at })
      await tx.objectStore('outbox').delete([person, what, job, name])
    }
  }))
}

/** Change members of a row that is still there. @param {any} row @param {Record<string, any>} change */
export async function changeRow({ person, what, job, name }, change) {
  await withRoom('text', () => withDb(['outbox'], 'readwrite', async (tx) => {
    const row = await tx.store.get([person, what, job, name])
    if (row) await tx.store.put({ ...row, ...change })
  }))
}
