// Send entries in batches; each has an answer of its own, and none blocks another.

import { digestOf } from '../entry/digest.js'
import { bySequence } from '../outbox/rows.js'
import { changeRow, settle, verifiedReceipt } from '../outbox/settle.js'
import { Trouble } from '../words/trouble.js'
import { withDb } from '../storage/database.js'
import { batch } from './batches.js'
import { adapt } from './pace.js'
import { REFUSED_DELAYS, outcome, waitFor } from './retry.js'
import { callAs } from '../people/token.js'

const LEAST = 4 * 1024
const MOST = 64 * 1024
let bytes = 16 * 1024 // of one batch, until a link is known to be quick

/**
 * @param {any} person @param {{jwk: any}} server @param {any[]} rows due entries of this person
 * @param {() => void} progress called after every batch that moved something
 * @throws {Trouble} when the link or the token fails: the round ends, nothing is lost
 */
export async function sendEntries(person, server, rows, progress) {
  let rest = [...rows].sort(bySequence)
  let full = null
  while (rest.length) {
    const next = batch(rest, bytes)
    rest = rest.slice(next.length)
    const good = await whole(next)
    const started = performance.now()
    /** @type {number | null} */
    let took = null
    try {
      if (await sendBatch(person, server, good)) progress()
      took = performance.now() - started
    } catch (fault) { // no room to note an answer: the office has it all the same, and the others still go
      if (!(fault instanceof Trouble) || fault.code !== 'outbox.disk_full') throw fault
      full ??= fault
    } finally {
      // What one more entry would have passed was full.
      bytes = adapt(bytes, rest.length ? bytes : 0, took, { least: LEAST, most: MOST })
    }
  }
  if (full) throw full
}

/** What is still as it was signed; the rest stays, named as damaged, and is in nobody's way. @param {any[]} rows */
async function whole(rows) {
  const good = []
  for (const { row, token } of await tokensOf(rows)) {
    const [header, payload] = String(token).split('.')
    if (token && (await digestOf(`${header}.${payload}`)) === row.name) good.push(row)
    else await changeRow(row, { state: 'damaged', refusal: { code: 'entry_damaged', field: '', value: row.name, message: '', wayOut: '' } })
  }
  return good
}

/** @param {any[]} rows @returns {Promise<{row: any, token: string | undefined}[]>} */
function tokensOf(rows) {
  return withDb(['entries'], 'readonly', async (tx) => {
    const found = []
    for (const row of rows) found.push({ row, token: (await tx.store.get([row.person, row.name]))?.token })
    return found
  })
}

/** @returns {Promise<boolean>} whether a receipt came @param {any} person @param {any} server @param {any[]} rows */
async function sendBatch(person, server, rows) {
  if (!rows.length) return false
  const tokens = (await tokensOf(rows)).map(({ token }) => token)
  const reply = await callAs(person, 'POST', '/api/entries', { json: { entries: tokens } })
  const meaning = outcome(reply.status)
  if (meaning === 'done' && Array.isArray(reply.data?.answers)) return takeAnswers(server, rows, reply.data.answers)
  if (meaning !== 'item') throw failed(reply)
  if (rows.length === 1) {
    await refuse(rows[0], { status: 'refused', ...reply.data?.error, code: reply.data?.error?.code ?? `http_${reply.status}` })
    return false
  }
  // Something in the batch is not to the server's taste: halves, until it stands alone.
  const middle = Math.ceil(rows.length / 2)
  const first = await sendBatch(person, server, rows.slice(0, middle))
  return (await sendBatch(person, server, rows.slice(middle))) || first
}

/** @param {any} server @param {any[]} rows @param {any[]} answers */
async function takeAnswers(server, rows, answers) {
  const byDigest = new Map(answers.map((answer) => [answer?.digest, answer]))
  const settled = []
  let unanswered = 0
  for (const row of rows) {
    const answer = byDigest.get(row.name)
    if (answer && (await verifiedReceipt(answer.receipt, server, row))) {
      settled.push({ row, token: answer.receipt })
    } else if (answer?.status === 'refused' || answer?.status === 'quarantined') {
      await refuse(row, answer)
    } else {
      unanswered += 1 // no receipt, or one that the pinned key did not sign: it stays and is sent again
    }
  }
  await settle(settled)
  if (unanswered && !settled.length) throw new Trouble('sync.no_receipt', { field: 'receipt', value: unanswered })
  return settled.length > 0
}

/** Keep a row with the server's reason. @param {any} row @param {any} answer of the server */
export async function refuse(row, answer) {
  const failures = row.failures + 1
  await changeRow(row, {
    state: answer.status === 'quarantined' ? 'held' : 'refused', failures,
    next: Date.now() + waitFor(failures, REFUSED_DELAYS, Math.random()),
    refusal: { code: text(answer.code), field: text(answer.field), value: text(answer.value),
      message: text(answer.message), wayOut: text(answer.way_out), facts: answer.facts ?? {} },
  })
}

/** @param {unknown} value */
function text(value) {
  return value === undefined || value === null ? '' : String(typeof value === 'object' ? JSON.stringify(value) : value)
}

/** @param {any} reply */
export function failed(reply) {
  const error = reply.data?.error ?? {}
  return new Trouble(outcome(reply.status) === 'sign' ? 'sync.key_refused' : 'sync.server_busy',
    { field: 'server', value: reply.status }, { message: error.message, wayOut: error.way_out })
}
