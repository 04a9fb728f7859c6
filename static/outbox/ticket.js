// The random tickets kept on this phone, and which of them are used. A lot is named and drawn by its ticket, so one is
// used once: the lot's entry and the mark on its ticket are kept in one transaction (`keep.js`), whatever other tabs do.
//
//   meta ['ticket', kid, job, series, n] -> {random, statement, used: digest of the lot's entry or null}

import { currentRow } from '../people/current.js'
import { withDb } from '../storage/database.js'
import { Trouble } from '../words/trouble.js'

/** @typedef {'work' | 'audit'} Series */
/** @typedef {{series: Series, n: number, random: string, statement: string}} Ticket */

const TRIES = 5

/** @param {string} kid @param {string} job @param {Series} series @returns {Promise<{n: number, used: string | null, ticket: Ticket}[]>} */
export async function ticketsOf(kid, job, series) {
  const range = IDBKeyRange.bound(['ticket', kid, job, series], ['ticket', kid, job, series, []])
  const [keys, rows] = await withDb(['meta'], 'readonly', (tx) => Promise.all([tx.store.getAllKeys(range), tx.store.getAll(range)]))
  return rows.map((/** @type {any} */ { random, statement, used }, /** @type {number} */ at) => {
    const n = keys[at][4]
    return { n, used, ticket: { series, n, random, statement } }
  })
}

/**
 * The current person's lowest unused ticket. It stays unused until its lot is kept: prefer `withTicket`.
 * @param {string} job @param {Series} series @returns {Promise<Ticket | null>}
 */
export async function nextTicket(job, series) {
  const kid = (await currentRow())?.kid
  return (kid && (await ticketsOf(kid, job, series)).find(({ used }) => !used)?.ticket) || null
}

/**
 * Draw by the next ticket: `work` gets it and keeps the lot by it. Where another tab was faster, again with the next.
 * @template T
 * @param {string} job @param {Series} series @param {(ticket: Ticket) => Promise<T>} work
 * @returns {Promise<T>} @throws {Trouble} `outbox.no_ticket`, and what `work` throws
 */
export async function withTicket(job, series, work) {
  for (let tries = 1; ; tries += 1) {
    const ticket = await nextTicket(job, series)
    if (!ticket) throw new Trouble('outbox.no_ticket', { field: 'ticket', value: series })
    try {
      return await work(ticket)
    } catch (fault) {
      if (!(fault instanceof Trouble) || fault.code !== 'outbox.ticket_taken' || tries === TRIES) throw fault
    }
  }
}

/** Keep tickets that were verified; one held already stays as it is. @param {string} kid @param {string} job @param {Ticket[]} tickets */
export async function keepTickets(kid, job, tickets) {
  await withDb(['meta'], 'readwrite', async (tx) => {
    for (const { series, n, random, statement } of tickets) {
      const key = ['ticket', kid, job, series, n]
      if (!(await tx.store.getKey(key))) await tx.store.put({ random, statement, used: null }, key)
    }
  })
}

/**
 * Mark a lot's ticket as used, in the transaction that keeps the lot. Once used, no other entry may draw by it: the record
 * would flag it, and the first draw would stand.
 * @param {any} tx over `meta` @param {{kid: string, job: string, digest: string}} entry @param {any} payload
 * @throws {Trouble} `outbox.ticket_taken`
 */
export async function useTicket(tx, { kid, job, digest }, { subject }) {
  const [owner, series, n] = subject.split('/')
  const key = ['ticket', kid, job, series, Number(n)]
  const row = owner === kid ? await tx.objectStore('meta').get(key) : undefined
  if (!row) return
  if (row.used && row.used !== digest) throw new Trouble('outbox.ticket_taken', { field: 'ticket', value: n })
  await tx.objectStore('meta').put({ ...row, used: digest }, key)
}
