// The word that a held leg may be covered: who says it, in which sentence, and on the strength of which walk.

import { say } from '../words/say.js'
import { enterCounted } from '../frame/enter.js'

/**
 * The sentence a person signs; another where nobody recorded a look at that panel. Of a look both ways it tells how far
 * the record's good panels run.
 * @param {string} why @param {string | null} way @param {boolean} seen @param {number} panel @param {any[]} [sides] of the lot's `failed`
 */
export function statement(why, way, seen, panel, sides = []) {
  const least = (/** @type {string} */ side) => Math.min(...sides.map((one) => one[side]))
  const facts = { panel, start: least('toward_start'), end: least('toward_end') }
  return say(why === 'failed' ? `release.failed.${way}` : seen ? `release.${why}` : 'release.unseen', facts)
}

/**
 * @param {{job: string, record: any, person: any, lot: any, area: string, panel: number, why: string, way?: string | null, seen: boolean, walk: any, sides?: any[], draft?: string}} what
 */
export function enterRelease({ job, record, person, lot, area, panel, why, way = null, seen, walk, sides, draft }) {
  const subject = `${lot.id}/${panel}/${why}`
  return enterCounted({ job, kind: 'release', subject, replaces: record.releases?.[subject]?.heads ?? [], draft,
    body: { lot: lot.id, area, panel, why, way, walk: walk?.id ?? null, statement: statement(why, way, seen, panel, sides), name: person.name, role: person.role } })
}

/** Whether a look is recorded: a place on this panel that was reached, or what was answered in the walk of this hold.
 * @param {any} record @param {string} area @param {number} panel @param {any} walk */
export function lookedAt(record, area, panel, walk) {
  return walk?.answers.length > 0 || Object.values(record.stations).some((/** @type {any} */ one) => one.area === area && one.panel === panel && one.reached === 'yes')
}
