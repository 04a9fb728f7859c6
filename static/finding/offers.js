// What may be done with a finding next, and by whom. Pure; states and authority are the record's.

const STANDING = ['open', 'corrected']
const DONE = ['closed', 'conceded']

/** @typedef {Record<string, string[]>} Authority kind of entry -> roles */

/** Corrections that a recheck can still close, newest first. @param {any} finding @returns {any[]} */
export function waiting(finding) {
  return finding.state === 'corrected' ? finding.corrections.filter((/** @type {any} */ one) => ['waiting', 'good'].includes(one.state)).reverse() : []
}

/** Rechecks and concessions that a reopening takes back: those that stand. @param {any} finding @returns {string[]} digests */
export function standing(finding) {
  const good = finding.rechecks.filter((/** @type {any} */ one) => one.result === 'good')
  return [...good, ...(finding.concession ? [finding.concession] : [])].filter((one) => one.counts && !one.spent).map((one) => one.digest)
}

/** The correction that this person may look at, or null: never their own. @param {any} finding @param {any} person */
export function forRecheck(finding, person) {
  return waiting(finding).find((one) => one.by !== person.id) ?? null
}

/**
 * @param {any} finding @param {any} person @param {Authority} authority
 * @returns {Record<string, {offered: boolean, why: string}>} by kind of entry: whether it is offered, and if not the word that says why; kinds that make no sense
 *   in this state are left out
 */
export function steps(finding, person, authority) {
  const may = (/** @type {string} */ kind) => (authority[kind] ?? []).includes(person.role)
  const by = (/** @type {string} */ kind) => ({ offered: may(kind), why: may(kind) ? '' : 'role' })
  if (DONE.includes(finding.state)) return { reopening: by('reopening') }
  if (!STANDING.includes(finding.state)) return {}
  const own = may('recheck') && !forRecheck(finding, person)
  return { ...(finding.state === 'corrected' ? { recheck: own ? { offered: false, why: 'own' } : by('recheck') } : {}),
    correction: by('correction'), assignment: by('assignment'), concession: by('concession') }
}
