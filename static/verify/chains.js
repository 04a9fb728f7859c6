// The server's chain of receipts, and each key's own chain of entries: no gap, no fork, nothing unlinked. The twin of
// inspect_app/entry/receipts.py and inspect_app/record/chain.py.

import { fails, holds } from './fact.js'

/** @typedef {import('./tokens.js').Tokens} Tokens */
/** @typedef {import('./statement.js').Statement} Statement */

/** @param {Tokens} tokens @returns {import('./fact.js').Fact} */
export function receiptsWhole({ receipts, receiptFaults }) {
  const places = byNumber(receipts, (one) => one.payload.n)
  const order = [...places.keys()].sort((a, b) => a - b)
  const forks = order.filter((n) => held(places, n).size > 1).length
  const broken = order.filter((n) => breaks(n, places, order[0])).length
  let number = 0
  for (const n of order) number += held(places, n).size
  const about = { refused: receiptFaults.length, gaps: gaps(order), forks, breaks: broken, count: number }
  const whole = number > 0 && !about.refused && !about.gaps && !forks && !broken
  return whole ? holds('receipts_whole', about) : fails('receipts_whole', 'chain_not_whole', about)
}

/** The receipt that ends the chain, or none. @param {Statement[]} receipts @returns {Statement | undefined} */
export function lastOf(receipts) {
  const most = receipts.reduce((found, { payload }) => Math.max(found, payload.n), -1)
  return receipts.filter(({ payload }) => payload.n === most).sort((a, b) => (a.digest < b.digest ? -1 : 1))[0]
}

/** @param {Tokens} tokens @returns {import('./fact.js').Fact} */
export function entriesReceipted({ entries, read }) {
  const said = read.map((one) => ({ entry: one ? one.payload.entry ?? null : '', job: one?.payload.job })) // what does not read speaks of no entry here
  const kept = said.filter(({ entry }) => entry !== null)
  const wanted = kept.map(({ entry }) => entry)
  const found = entries.map((one) => one.digest)
  const [every, here] = [new Set(wanted), new Set(found)]
  const about = { missing: [...every].filter((one) => !here.has(one)).length, without: [...here].filter((one) => !every.has(one)).length }
  const same = wanted.length === found.length && wanted.every((one, at) => one === found[at])
  if (!same) return fails('entries_receipted', 'other_entries', about)
  const other = entries.filter(({ payload }, at) => payload.job !== kept[at].job).length
  return other ? fails('entries_receipted', 'other_job', { ...about, other }) : holds('entries_receipted', about)
}

/** @param {Tokens} tokens @returns {import('./fact.js').Fact} */
export function chainsWhole({ entries }) {
  const about = { gaps: 0, forks: 0, orphans: 0 }
  for (const kid of new Set(entries.map((one) => one.kid))) {
    const own = entries.filter((one) => one.kid === kid)
    const bySeq = byNumber(own, (one) => one.payload.seq)
    const order = [...bySeq.keys()].sort((a, b) => a - b)
    about.gaps += gaps(order)
    about.forks += order.filter((seq) => held(bySeq, seq).size > 1).length
    const payloads = new Map(own.map((one) => [one.digest, one.payload]))
    about.orphans += [...payloads.values()].filter(({ seq, prev }) => (prev === null ? seq !== 0 : payloads.get(prev)?.seq !== seq - 1)).length
  }
  const whole = !about.gaps && !about.forks && !about.orphans
  return whole ? holds('chains_whole', about) : fails('chains_whole', 'chain_not_whole', about)
}

/**
 * @template {{digest: string}} T @param {T[]} all @param {(one: T) => number} number
 * @returns {Map<number, Map<string, T>>} number -> digest -> one
 */
function byNumber(all, number) {
  const places = new Map()
  for (const one of all) {
    if (!places.has(number(one))) places.set(number(one), new Map())
    places.get(number(one)).set(one.digest, one)
  }
  return places
}

/** @template T @param {Map<number, Map<string, T>>} places @param {number} n @returns {Map<string, T>} */
const held = (places, n) => places.get(n) ?? new Map()

/** How many runs of numbers are missing, from 0 on. @param {number[]} order */
const gaps = (order) => order.filter((n, at) => n > (at ? order[at - 1] + 1 : 0)).length

/**
 * Whether a place does not follow the one before it, or speaks of another job than the first.
 * @param {number} n @param {Map<number, Map<string, Statement>>} places @param {number} first
 */
function breaks(n, places, first) {
  const before = places.get(n - 1)
  const start = [...held(places, first).values()].sort((a, b) => (a.digest < b.digest ? -1 : 1))[0]
  return [...held(places, n).values()].some(({ payload }) => {
    const previous = before?.get(payload.prev)
    const unlinked = before !== undefined && previous === undefined
    return payload.job !== start.payload.job || unlinked || (previous !== undefined && previous.payload.seq >= payload.seq)
  })
}
