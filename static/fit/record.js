// A fit check as an entry: what was found, and every line with the verdict the rulebook gave.

import { enter } from '../frame/enter.js'
import { computed } from '../walk/verdict.js'

const MAY = ['administrator', 'inspector', 'foreman']

/** @param {any} person */
export function mayRecord(person) {
  return MAY.includes(person.role)
}

/**
 * @param {{job: string, record: any, area: any, person: any, day: string, found: any, note: string, lines: any[], rulebook: string, draft: string}} what
 * @returns {Promise<any>} resolves only when it is saved on this phone
 */
export function recordFit({ job, record, area, person, day, found, note, lines, rulebook, draft }) {
  return enter({
    job, kind: 'fit', subject: area.id, replaces: replaced(record.fits[area.id], person), draft,
    body: { area: area.id, day, found, note: note.trim(), name: person.name, role: person.role,
      lines: lines.map((one) => ({ line: one.line, verdict: computed(one, one.rule ? rulebook : '') })) },
  })
}

/** The versions this one may supersede: one's own, or any where one's part is to choose. @param {any} before @param {any} person @returns {string[]} */
function replaced(before, person) {
  const any = person.role !== 'foreman'
  return (before?.versions ?? []).filter((/** @type {any} */ one) => before.heads.includes(one.digest) && (any || one.by === person.id))
    .map((/** @type {any} */ one) => one.digest)
}
