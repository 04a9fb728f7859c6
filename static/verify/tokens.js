// The signed lines of a package, and which of them are signed by whom they must be: the twin of
// inspect_app/evidence/tokens.py.

import { importPublic, thumbprint } from '../entry/key.js'
import { verifyByKey } from '../entry/parse.js'
import { Refused } from '../entry/refused.js'
import { readEntry } from './entry.js'
import { parseStatement } from './statement.js'

/** @typedef {import('../entry/key.js').PublicJwk} PublicJwk */
/** @typedef {import('./statement.js').Statement} Statement */
/** @typedef {import('./entry.js').Entry} Entry */
/** A line that does not hold, from 1, and why: a code of the words `verify_page.token.CODE`.
 * @typedef {{line: number, code: string}} Fault */
/** `key` null where there is no such point on the curve: a name that signed nothing. @typedef {{kid: string, key: CryptoKey | null}} Key */
/** `read`: every line of the receipts as it stands there, whoever signed it; null where there is no statement.
 * @typedef {{server: Key, enrolments: Statement[], enrolmentFaults: Fault[], entries: Entry[], entryFaults: Fault[],
 *   receipts: Statement[], receiptFaults: Fault[], read: (Statement | null)[]}} Tokens */

/**
 * @param {{server: PublicJwk, enrolments: string, entries: string, receipts: string}} files
 * @param {string[]} kinds of entries @param {(done: number) => void} [step] after each line
 * @returns {Promise<Tokens>} throws Refused where the server's key is no key at all
 */
export async function readTokens(files, kinds, step = () => {}) {
  const server = await keyOf(files.server)
  const [enrolments, enrolmentFaults] = await each(files.enrolments, step, async (line) => {
    const statement = await parseStatement(line)
    await byKey(statement, server)
    if (statement.kind === 'receipt') throw new Refused('unknown_kind', 'kind', statement.kind)
    return statement
  })
  /** @type {Map<string, Record<string, any>>} */
  const owners = new Map(enrolments.filter((one) => one.kind === 'enrolment').map((one) => [one.payload.kid, one.payload]))
  /** @type {Map<string, CryptoKey>} */
  const keys = new Map()
  const [entries, entryFaults] = await each(files.entries, step, async (line) => {
    const entry = await readEntry(line, kinds)
    const owner = owners.get(entry.kid)
    if (!owner) throw new Refused('unknown_key', 'header.kid', entry.kid)
    const key = keys.get(entry.kid) ?? (await importPublic(owner.jwk))
    keys.set(entry.kid, key)
    await verifyByKey(entry, key)
    if (owner.person.id !== entry.payload.by) throw new Refused('wrong_person', 'by', entry.payload.by)
    return entry
  })
  /** @type {(Statement | null)[]} */
  const read = []
  const [receipts, receiptFaults] = await each(files.receipts, step, async (line) => {
    const at = read.push(null) - 1
    const statement = read[at] = await parseStatement(line)
    await byKey(statement, server)
    if (statement.kind !== 'receipt') throw new Refused('unknown_kind', 'kind', statement.kind)
    return statement
  })
  return { server, enrolments, enrolmentFaults, entries, entryFaults, receipts, receiptFaults, read }
}

/** Throws Refused. @param {PublicJwk} jwk @returns {Promise<Key>} */
export async function keyOf(jwk) {
  const { kty, crv, x, y } = jwk
  if (kty !== 'EC' || ![crv, x, y].every((one) => typeof one === 'string')) throw new Refused('bad_key', 'jwk.kty', kty)
  return { kid: await thumbprint(jwk), key: await importPublic(jwk).catch(() => null) }
}

/** Throws Refused. @param {Statement} statement @param {Key} key */
export async function byKey(statement, { kid, key }) {
  if (statement.kid !== kid) throw new Refused('unknown_key', 'header.kid', statement.kid)
  if (!key) throw new Refused('bad_key', 'jwk.y', '')
  await verifyByKey(statement, key)
}

/**
 * @template T @param {string} text @param {(done: number) => void} step @param {(line: string) => Promise<T>} read
 * @returns {Promise<[T[], Fault[]]>}
 */
async function each(text, step, read) {
  const lines = text.split('\n')
  if (lines[lines.length - 1] === '') lines.pop() // each is ended by one line feed: what follows the last is a line too
  /** @type {T[]} */
  const good = []
  /** @type {Fault[]} */
  const faults = []
  for (const [at, line] of lines.entries()) {
    try {
      good.push(await read(line))
    } catch (error) {
      if (!(error instanceof Refused)) throw error
      faults.push({ line: at + 1, code: error.code })
    }
    step(1)
  }
  return [good, faults]
}
