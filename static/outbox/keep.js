// Sign and keep an entry. It is saved when this resolves, and not before.
//
// WebCrypto ends an IndexedDB transaction, so the chain needs three steps: read its head, sign outside, then in
// one transaction compare the head, put the entry and its outbox row, move the head. If another tab was faster,
// sign again on top of what it wrote.

import { Refused } from '../entry/refused.js'
import { signEntry } from '../entry/sign.js'
import { uuid7 } from '../entry/uuid7.js'
import { build } from '../server/build.js'
import { Trouble } from '../words/trouble.js'
import { withDb } from '../storage/database.js'
import { draftGone } from '../storage/drafts.js'
import { withRoom } from '../storage/room.js'
import { keepTwice } from '../storage/twice.js'
import { currentRow } from '../people/current.js'
import { privateKey } from '../people/device.js'
import { readClocks } from '../server/clock.js'
import { picturesOf, unsentPhoto } from './pictures.js'
import { outboxRows } from './rows.js'
import { useTicket } from './ticket.js'

const TRIES = 50
const STORES = ['chains', 'entries', 'outbox', 'photos', 'receipts', 'drafts']

/** One at a time in this tab: only other tabs can then be faster. @type {Promise<any>} */
let turn = Promise.resolve()

/**
 * @param {{job: string, kind: string, subject: string, body: Record<string, any>, replaces?: string[],
 *   draft?: string}} what `draft` is the key of a draft to drop in the same transaction
 * @returns {Promise<{digest: string, id: string}>}
 * @throws {Trouble} `people.nobody`, `people.no_key`, `outbox.disk_full`, `outbox.storage_stopped`,
 *   `outbox.not_signable` for a body that no entry may carry, or over 64 KiB, `outbox.ticket_taken` for a lot whose
 *   ticket was used meanwhile
 */
export function keepEntry(what) {
  const mine = turn.then(() => keep(what))
  turn = mine.catch(() => {})
  return mine
}

/** @param {any} what */
async function keep(what) {
  const person = await currentRow()
  if (!person) throw new Trouble('people.nobody', { field: 'person', value: '' })
  const key = person.kid ? await privateKey(person.id, person.kid) : undefined
  if (!key || !person.kid) throw new Trouble('people.no_key', { field: 'key', value: person.name })
  const chain = [person.kid, what.job]
  const id = uuid7()
  const made = { ...readClocks(), build: await build() }
  for (let tries = 0; tries < TRIES; tries += 1) {
    const head = await withDb(['chains'], 'readonly', (tx) => tx.store.get(chain))
    const payload = {
      v: 1, id, kind: what.kind, job: what.job, subject: what.subject, replaces: what.replaces ?? [],
      at: made.at, clock: made.clock, seq: head ? head.seq + 1 : 0, prev: head ? head.digest : null,
      by: person.id, build: made.build, body: what.body,
    }
    const { token, digest } = await signed(payload, { kid: person.kid, privateKey: key })
    const entry = { person: person.id, digest, job: what.job, kid: person.kid, token, from: 'own' }
    if (await withRoom('text', () => commit(entry, payload, what.draft))) {
      if (what.draft !== undefined) draftGone(person.id, what.draft)
      await twice(entry)
      window.dispatchEvent(new CustomEvent('seamwalk:kept', { detail: { job: what.job, digest } }))
      return { digest, id }
    }
  }
  throw new Trouble('outbox.storage_stopped', { value: 'chain' })
}

/** Keep it a second time. @param {any} entry saved already */
export async function twice({ person, digest, job, kid, token }) {
  const head = { what: /** @type {const} */ ('entry'), person, name: digest, job, kid }
  await keepTwice(head, new TextEncoder().encode(token))
}

/** @param {any} payload @param {import('../entry/key.js').SigningKey} key */
async function signed(payload, key) {
  try {
    return await signEntry(payload, key)
  } catch (fault) {
    if (!(fault instanceof Refused)) throw fault
    throw new Trouble('outbox.not_signable', { field: fault.field, value: fault.value, code: fault.code })
  }
}

/**
 * Idempotent: run again after it had committed, it finds its own digest at the head and is content.
 * @param {any} entry @param {any} payload @param {string} [draft] @returns {Promise<boolean>} false: another tab moved the head
 */
function commit(entry, payload, draft) {
  const chain = [entry.kid, entry.job]
  const stores = payload.kind === 'lot' ? [...STORES, 'meta'] : STORES
  return withDb(stores, 'readwrite', async (tx) => {
    const head = await tx.objectStore('chains').get(chain)
    if (head?.digest === entry.digest) return true
    if ((head?.digest ?? null) !== payload.prev) return false
    const photos = []
    for (const picture of picturesOf(payload)) photos.push(await unsentPhoto(tx, entry, picture))
    if (payload.kind === 'lot') await useTicket(tx, entry, payload)
    await tx.objectStore('entries').put(entry)
    for (const row of outboxRows(entry, payload, photos.filter(Boolean))) await tx.objectStore('outbox').put(row)
    if (draft !== undefined) await tx.objectStore('drafts').delete([entry.person, draft])
    // Last: where it stands, a replay has nothing left to do.
    await tx.objectStore('chains').put({ kid: entry.kid, job: entry.job, seq: payload.seq, digest: entry.digest })
    return true
  })
}
