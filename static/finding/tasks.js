// Which findings stand on a crew's list. Pure; states are the record's.

import { sameCrew } from '../record/crew.js'
import { TO_DO, crewsOf } from './filter.js'

/** @param {any[]} findings @returns {{crew: string, n: number}[]} every crew with something to do, and '' where nobody was named; `n` to fix */
export function crewsToday(findings) {
  const due = findings.filter((one) => TO_DO.includes(one.state))
  const names = crewsOf(due)
  const all = due.some((one) => !one.crew?.trim()) ? [...names, ''] : names
  return all.map((crew) => ({ crew, n: tasks(due, crew).fix.length }))
}

/** The crew that an address asks for, else the first. @param {{crew: string}[]} crews @param {string} [asked] `-` for nobody named */
export function chosenCrew(crews, asked) {
  const wanted = asked === '-' ? '' : asked
  return crews.find(({ crew }) => wanted !== undefined && sameCrew(crew, wanted))?.crew ?? crews[0]?.crew ?? ''
}

/** A tick speaks of the work that was open when it was made: once corrected and sent back, the same finding is not ticked. @param {Record<string, any>} ticks @param {any} finding */
export function isTicked(ticks, finding) {
  return ticks[finding.id] === tickOf(finding)
}

/** What a tick is kept as. @param {any} finding @returns {string} */
export function tickOf(finding) {
  return `after ${finding.corrections.length}`
}

/** @param {any[]} findings in walking order @param {string} crew @returns {{fix: any[], recheck: any[]}} */
export function tasks(findings, crew) {
  const own = findings.filter((one) => sameCrew(one.crew, crew))
  return { fix: own.filter((one) => one.state === 'open'), recheck: own.filter((one) => one.state === 'corrected') }
}
