// Bring over the random tickets that draws are made by, so that a day can be planned without signal. Part of every
// round, for people who may draw; a call only where some are wanting.

import { verifyTicket } from '../entry/ticket.js'
import { Refused } from '../entry/refused.js'
import { keepTickets, ticketsOf } from '../outbox/ticket.js'
import { currentRow } from '../people/current.js'
import { pinnedServer } from '../people/device.js'
import { callAs } from '../people/token.js'
import { Trouble } from '../words/trouble.js'
import { failed } from './entries.js'

/** @typedef {import('../outbox/ticket.js').Series} Series */

const AHEAD = 12 // as many as the server gives ahead of the last draw it knows of
const DRAWERS = ['foreman', 'inspector', 'reviewer']

/**
 * The tickets of the series `work`, of all jobs. One job's trouble never hides another's; a dead link ends it.
 * @param {any} person @param {{jwk: any}} server @param {string[]} jobs @param {() => void} progress
 * @returns {Promise<Trouble | null>} the first trouble met @throws {Trouble} when the link fails
 */
export async function pullTickets(person, server, jobs, progress) {
  let trouble = null
  for (const job of DRAWERS.includes(person.role) ? jobs : []) {
    try {
      if (await fetchTickets(person, server, job, 'work', AHEAD)) progress()
    } catch (fault) {
      if (!(fault instanceof Trouble) || ['sync.offline', 'sync.not_our_server'].includes(fault.code)) throw fault
      trouble ??= fault
    }
  }
  return trouble
}

/**
 * From which series an audit draws now: a fresh ticket of its own where there is signal, else the next that is kept.
 * @param {string} job @returns {Promise<Series>} @throws {Trouble} the server's refusal
 */
export async function auditSeries(job) {
  const [person, server] = [await currentRow(), await pinnedServer()]
  if (!person?.kid || !server) return 'work'
  try {
    await fetchTickets(person, server, job, 'audit', 1)
  } catch (fault) {
    if (!(fault instanceof Trouble) || !['sync.offline', 'sync.not_our_server'].includes(fault.code)) throw fault
    return 'work'
  }
  return 'audit'
}

/** @param {any} person @param {any} server @param {string} job @param {Series} series @param {number} wanted unused ones
 * @returns {Promise<boolean>} whether any came @throws {Trouble} `sync.forged_ticket`: none of the answer is taken */
async function fetchTickets(person, server, job, series, wanted) {
  const held = await ticketsOf(person.kid, job, series)
  if (held.filter(({ used }) => !used).length >= wanted) return false
  const have = held.at(-1)?.n ?? -1
  const reply = await callAs(person, 'POST', '/api/tickets', { json: { job, series, have } })
  if (!Array.isArray(reply.data?.tickets)) throw failed(reply)
  await keepTickets(person.kid, job, await checked(reply.data.tickets, server, { job, kid: person.kid, series }, have))
  return reply.data.tickets.length > 0
}

/** @param {unknown[]} statements @param {any} server @param {import('../entry/ticket.js').Whose} whose @param {number} have */
async function checked(statements, server, whose, have) {
  const tickets = []
  let last = have
  for (const statement of statements) {
    try {
      const { n, random } = await verifyTicket(statement, server.jwk, whose)
      if (n <= last) throw new Refused('bad_field', 'ticket.n', n)
      last = n
      tickets.push({ series: whose.series, n, random, statement: String(statement) })
    } catch (fault) {
      if (!(fault instanceof Refused)) throw fault
      throw new Trouble('sync.forged_ticket', { field: fault.field, value: last + 1 })
    }
  }
  return tickets
}
