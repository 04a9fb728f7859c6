// The outbox as a person sees it: each item with its state, and a way out of a refusal.

import { withDb } from '../storage/database.js'
import { currentPerson } from '../people/current.js'
import { rowsOf } from './counts.js'
import { bySequence } from './rows.js'

/**
 * @returns {Promise<{what: 'entry' | 'photo', name: string, job: string, kind: string, subject: string, at: string,
 *   size: number, state: 'waiting' | 'refused' | 'held' | 'damaged',
 *   refusal: {code: string, field: string, value: string, message: string, wayOut: string} | null}[]>}
 */
export async function outboxItems() {
  return (await rowsOf(await currentPerson())).sort(bySequence)
}

/** Send a refused item again at the next occasion. @param {{what: string, job: string, name: string}} item */
export async function sendAgain({ what, job, name }) {
  const person = await currentPerson()
  await withDb(['outbox'], 'readwrite', async (tx) => {
    const row = await tx.store.get([person, what, job, name])
    if (row) await tx.store.put({ ...row, state: 'waiting', refusal: null, failures: 0, next: 0 })
  })
}
