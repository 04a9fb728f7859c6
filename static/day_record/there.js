// Which day of which crew, and what was written of it: as the record puts them together.

import { signer } from '../frame/signer.js'
import { say } from '../words/say.js'
import { PRESSED, NONE } from './pressed.js'

/** The record's day of a crew, by any spelling; null where nothing speaks of it. @param {any} record @param {string} day @param {string} crew */
export function dayOf(record, day, crew) {
  const own = (record.days ?? []).filter((/** @type {any} */ one) => one.day === day)
  return own.find((/** @type {any} */ one) => one.crews.includes(crew)) ?? own.find((/** @type {any} */ one) => one.crews.some((/** @type {string} */ name) => name.trim() === crew.trim())) ?? null
}

/** The crews that worked here or were written of, the last first. @param {any} record @returns {string[]} */
export function crewsOf(record) {
  const days = [...(record.days ?? [])].reverse()
  return [...new Set(/** @type {string[]} */ (days.map((one) => one.crew.trim())))].filter(Boolean).slice(0, 4)
}

/** This person's own record of that day, the newest of them. @param {any} known from `dayOf` @param {any} person */
export function ownEntry(known, person) {
  const own = (known?.entries ?? []).filter((/** @type {any} */ one) => one.by === person.id)
  return own.sort((/** @type {any} */ a, /** @type {any} */ b) => (a.at < b.at ? 1 : -1))[0] ?? null
}

/** `rain; tarp on the hatch` as somebody reads it: what was pressed in their language, what was typed as it is. @param {string} group @param {string} text */
export function worded(group, text) {
  const codes = [...(/** @type {any} */ (PRESSED)[group] ?? []), NONE]
  return text.split('; ').filter(Boolean).map((part) => (codes.includes(part) ? say(`day_record.${group}.${part}`) : part)).join('; ')
}

/** Where a day's record stands, in one line. @param {any} known from `dayOf` @param {import('../frame/people.js').People} people @param {boolean} [part] a part of the job is seen: another firm may have written what is not shown */
export function standingOf(known, people, part) {
  if (!known?.entries.length) return say(part ? 'day_record.not_seen' : 'day_record.not_there')
  if (known.no_work.length === known.entries.length) return say('day_record.there.no_work', { why: worded('why', known.no_work[0].why) })
  return say('day_record.there', { names: [...new Set(known.entries.map((/** @type {any} */ one) => signer(people, one)))].join(', ') })
}

const MAY = ['administrator', 'foreman', 'inspector']

/** Whether this person writes a day's record; others read it. @param {any} person */
export function mayWrite(person) {
  return MAY.includes(person.role)
}

/** A crew as a step of an address, which may not be empty. @param {string} crew */
export const crewStep = (crew) => `~${crew}`
