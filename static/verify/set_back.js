// Whether the server was ever set back to a backup, and whose entries came once their key was ended: the twins of
// inspect_app/evidence/set_back.py and late.py.

import { fails, holds, unknown } from './fact.js'

/** @typedef {import('./tokens.js').Tokens} Tokens */
/** @typedef {import('./statement.js').Statement} Statement */

/** @param {Tokens} tokens @returns {import('./fact.js').Fact} */
export function neverSetBack({ enrolments, read }) {
  const said = enrolments.filter((one) => one.kind === 'restoration').sort((a, b) => a.payload.seq - b.payload.seq)
  const receipts = read.filter((one) => one?.kind === 'receipt').map((one) => /** @type {Statement} */ (one).payload)
  const wrong = receipts.filter((one) => (one.restored ?? null) !== named(one.seq, said))
  if (wrong.length) return fails('never_set_back', 'restoration_hidden', { count: wrong.length, n: wrong[0].n })
  if (!said.length) return holds('never_set_back')
  const newest = said[said.length - 1].payload
  return unknown('never_set_back', 'set_back', { count: said.length, at: newest.at, last: newest.last })
}

/**
 * What a receipt of that number has to name: the newest restoration before it; `lost` for a number that was given in the
 * time that a restoration undid. @param {number} seq @param {Statement[]} said
 */
function named(seq, said) {
  if (said.some(({ payload }) => payload.last < seq && seq < payload.seq)) return 'lost'
  return said.filter(({ payload }) => payload.seq < seq).pop()?.digest ?? null
}

/**
 * Entries that came once their key was ended and that no administrator let in.
 * @param {Tokens} tokens @returns {import('./tokens.js').Fault[]}
 */
export function late({ enrolments, entries, read }) {
  /** @type {Map<string, number>} */
  const ended = new Map()
  for (const { kind, payload: { kid, seq } } of enrolments) {
    if (kind === 'revocation') ended.set(kid, Math.min(seq, ended.get(kid) ?? seq)) // said twice, the first ends it
  }
  if (!ended.size) return []
  const people = peopleOf(enrolments)
  const letIn = new Set(entries.filter((one) => one.kind === 'admission' && mayLetIn(people.get(one.payload.by), one.kid)).map((one) => one.payload.body.entry))
  /** @type {Map<string, number>} */
  const came = new Map(read.filter((one) => one !== null).map(({ payload }) => [payload.entry, payload.seq]))
  const isLate = (/** @type {import('./entry.js').Entry} */ one) => (came.get(one.digest) ?? 0) > (ended.get(one.kid) ?? Infinity)
  return entries.flatMap((one, at) => (isLate(one) && !letIn.has(one.digest) ? [{ line: at + 1, code: 'key_revoked' }] : []))
}

/** @param {Person | undefined} person @param {string} kid */
const mayLetIn = (person, kid) => person?.role === 'administrator' && person.kids.includes(kid)

/** @typedef {{id: string, name: string, role: string, kids: string[], devices: string[]}} Person */

/**
 * Who each key speaks for; of a person enrolled more than once the last name and role stand.
 * @param {Statement[]} enrolments @returns {Map<string, Person>}
 */
export function peopleOf(enrolments) {
  /** @type {Map<string, Person>} */
  const people = new Map()
  const inOrder = enrolments.filter((one) => one.kind === 'enrolment').sort((a, b) => a.payload.seq - b.payload.seq)
  for (const { payload: { kid, device, person: { id, name, role } } } of inOrder) {
    const known = people.get(id)
    people.set(id, { id, name, role, kids: [...(known?.kids ?? []), kid], devices: [...(known?.devices ?? []), device] })
  }
  return people
}
