// Whether every countersignature that the server states is still in its report: the twin of
// inspect_app/evidence/countersigned.py. A report whose last signature was cut off is, to the byte, the one from before.

import { fails, holds } from './fact.js'
import { reportIn } from './names.js'

/**
 * `countersignatures_there`, by the package's own statements: those that a later report encloses the program reads too. Of
 * a report that is not here nothing is said. @param {import('./bag.js').Hashes} hashes
 * @param {import('./tokens.js').Tokens | null} tokens
 */
export function countersignedFact(hashes, tokens) {
  const { enrolments, entries } = tokens ?? { enrolments: [], entries: [] }
  const jobs = new Set(entries.map(({ payload }) => payload.job))
  const prints = new Map([...hashes].flatMap(([file, hash]) => (reportIn(file) ? [[Number(reportIn(file)), hash]] : [])))
  /** @type {Map<number, Record<string, any>[]>} */
  const every = new Map()
  for (const { kind, payload } of enrolments) {
    if (kind !== 'countersignature' || jobs.size !== 1 || !jobs.has(payload.job) || !prints.has(payload.number)) continue
    every.set(payload.number, [...(every.get(payload.number) ?? []), payload])
  }
  for (const [number, told] of [...every].sort(([a], [b]) => a - b)) {
    const last = told.reduce((one, other) => (other.n > one.n || (other.n === one.n && other.seq > one.seq) ? other : one))
    const print = prints.get(number)
    if (print === last.after) continue
    const gone = told.some((one) => one.before === print)
    return fails('countersignatures_there', gone ? 'countersignature_gone' : 'countersigned_otherwise', { number, name: last.name })
  }
  return holds('countersignatures_there', { count: every.size })
}
