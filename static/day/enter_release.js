// The word that a held leg may be covered: who says it, in which sentence, and on the strength of which walk.

import { say } from '../words/say.js'
import { enter } from '../frame/enter.js'

/**
 * The sentence a person signs; another where nobody recorded a look at that panel.
 * @param {string} why @param {string | null} way @param {boolean} seen @param {number} panel
 */
export function statement(why, way, seen, panel) {
  return say(why === 'failed' ? `release.failed.${way}` : seen ? `release.${why}` : 'release.unseen', { panel })
}

/**
 * @param {{job: string, record: any, person: any, lot: any, area: string, panel: number, why: string, way?: string | null, seen: boolean, walk: any, draft?: string}} what
 */
export function enterRelease({ job, record, person, lot, area, panel, why, way = null, seen, walk, draft }) {
  const subject = `${lot.id}/${panel}/${why}`
  return enter({ job, kind: 'release', subject, replaces: record.releases?.[subject]?.heads ?? [], draft,
    body: { lot: lot.id, area, panel, why, way, walk: walk?.id ?? null, statement: statement(why, way, seen, panel), name: person.name, role: person.role } })
}

/** Whether a look is recorded: a place on this panel that was reached, or what was answered in the walk of this hold.
 * @param {any} record @param {string} area @param {number} panel @param {any} walk */
export function lookedAt(record, area, panel, walk) {
  return walk?.answers.length > 0 || Object.values(record.stations).some((/** @type {any} */ one) => one.area === area && one.panel === panel && one.reached === 'yes')
}
