// What the office said of a copy's parts, put together as if it had come in one. Pure.

/** @typedef {{what: string, name: string, job: string, status: string, kind?: string, at?: string, who?: string, code?: string, field?: string,
 *   value?: string, message?: string, way_out?: string}} Came */
/** @typedef {{made: string | null, listed: boolean, sealed: boolean, seals: any[], damage: any[], came: Map<string, Came>}} Outcome */

export const TAKEN = ['accepted', 'duplicate', 'quarantined']
export const STATUSES = [...TAKEN, 'refused', 'damaged', 'absent']

/** @returns {Outcome} */
export function nothingYet() {
  return { made: null, listed: false, sealed: false, seals: [], damage: [], came: new Map() }
}

/** @param {Outcome} before @param {any} told of one part @param {number} from where the part stands in the file @returns {Outcome} */
export function withPart(before, told, from) {
  const came = new Map(before.came)
  for (const one of told.items) {
    const key = [one.what, one.what === 'photo' ? one.job : '', one.name].join('/')
    const known = came.get(key)
    if (!known) came.set(key, one)
    else if (known.status === 'absent') came.set(key, { ...told_of(known), ...one }) // listed in one part, there in another
  }
  return {
    made: before.made ?? told.at, listed: before.listed || told.copy !== null, sealed: before.sealed || told.sealed,
    seals: [...before.seals, ...told.seals],
    damage: [...before.damage, ...told.damage.map((/** @type {any} */ one) => ({ ...one, at: one.at + from }))], came,
  }
}

/** @param {Outcome} outcome @returns {Record<string, number>} */
export function counted({ came }) {
  /** @type {Record<string, number>} */
  const counts = {}
  for (const { status } of came.values()) counts[status] = (counts[status] ?? 0) + 1
  return counts
}

/** Whether nothing at all is wrong. @param {Outcome} outcome */
export function isWhole(outcome) {
  return outcome.listed && outcome.sealed && !outcome.damage.length && [...outcome.came.values()].every(({ status, at }) => at !== undefined && TAKEN.includes(status))
}

/** What the list tells of a thing. @param {Came} one */
function told_of({ kind, at, who }) {
  return { kind, at, who }
}
