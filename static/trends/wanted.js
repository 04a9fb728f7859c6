// What a look at trends is narrowed to, kept per job while the app is open: a list one came from stays as it was.

/** @typedef {Record<string, any>} Wanted lists by name, `from` and `to` a day or '' */

export const NAMES = ['area', 'zone', 'crew', 'firm', 'assembly', 'severity', 'item']

/** @type {Map<string, {wanted: Wanted, by: string}>} */
const kept = new Map()

/** @param {string} job @returns {{wanted: Wanted, by: string}} `by`: what findings are counted by */
export function keptFor(job) {
  return kept.get(job) ?? { wanted: {}, by: 'item' }
}

/** @param {string} job @param {Partial<{wanted: Wanted, by: string}>} change */
export function keepFor(job, change) {
  const next = { ...keptFor(job), ...change }
  kept.set(job, next)
  return next
}

/** The names in use. @param {Wanted} wanted @returns {string[]} */
export function inUse(wanted) {
  return [...NAMES.filter((name) => wanted[name]?.length), ...['from', 'to'].filter((name) => wanted[name])]
}

/** As the rulebook takes it: what is empty left out. @param {Wanted} wanted @returns {Wanted} */
export function asked(wanted) {
  return Object.fromEntries(inUse(wanted).map((name) => [name, wanted[name]]))
}

/** As an address takes it, a name once for each value. @param {Wanted} wanted */
export function asQuery(wanted) {
  const query = new URLSearchParams()
  for (const name of inUse(wanted)) for (const value of [wanted[name]].flat()) query.append(name, value)
  return query
}
