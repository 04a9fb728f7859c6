// A survey's entry: from what is typed to its body and back. Pure.

import { isDay } from './day_field.js'

/** A sample that somebody took: no bag yet, in nobody else's hands. */
export const SAMPLE = { bag: '', what: '', day: '', taken_by: '', photos: /** @type {string[]} */ ([]), taken: '', waiting: '', custody: /** @type {any[]} */ ([]) }
export const CHANGE = { what: 'equipment', day: '', by: '', said: '' }
export const SUBSTITUTION = { what: '', agreed_by: '' }
export const HAND = { day: '', from: '', to: '', kept: '' }

/** @param {any} old one's own survey of this place, or null @param {string} id a new id @returns {any} the draft to begin with */
export function blank(old, id) {
  const days = (/** @type {any} */ row) => ({ ...row, day: row.day ?? '' })
  if (!old) {
    return { id, warranty: { shown: '', number: '', by: '', terms: '', from: '', until: '' }, event: { what: '', day: '', figures: '', source: '' },
      noticed: { day: '', by: '', said: '' }, substitutions: [], changed: '', changes: [], samples: [], wear: null, doubt: null, wear_by: '', photos: [], taken: '', waiting: '', note: '' }
  }
  return { id: old.id, warranty: { ...old.warranty, from: old.warranty.from ?? '', until: old.warranty.until ?? '' }, event: days(old.event), noticed: days(old.noticed),
    substitutions: old.substitutions, changed: old.changed, changes: old.changes.map(days),
    samples: old.samples.map((/** @type {any} */ row) => ({ ...SAMPLE, ...days(row), custody: row.custody.map(days) })),
    wear: old.wear?.length.value ?? null, doubt: old.wear?.uncertainty.value ?? null, wear_by: old.wear?.by ?? '', photos: old.photos, taken: '', waiting: '', note: old.note }
}

/** @param {any} draft @returns {string | null} the word that says what is still to be put right; null when it can be signed */
export function lacking(draft) {
  const days = [draft.warranty.from, draft.warranty.until, draft.event.day, draft.noticed.day, ...draft.changes.map((/** @type {any} */ row) => row.day),
    ...draft.samples.flatMap((/** @type {any} */ row) => [row.day, ...row.custody.map((/** @type {any} */ hand) => hand.day)])]
  if (!days.every(isDay)) return 'survey.day.hint'
  if (draft.wear !== null && draft.doubt === null) return 'survey.sign.doubt'
  return draft.samples.every((/** @type {any} */ row) => row.bag.trim()) ? null : 'survey.sign.bag'
}

/**
 * @param {any} draft @param {import('./address.js').Place} place @param {any} person @param {string} statement
 * @param {any} wear `{length, uncertainty, verdict}` or null
 */
export function bodyOf(draft, place, person, statement, wear) {
  const day = (/** @type {string} */ text) => text.trim() || null
  const told = (/** @type {any} */ row) => ({ ...row, day: day(row.day) })
  return { ...place,
    warranty: { ...draft.warranty, shown: draft.warranty.shown || 'not_shown', from: day(draft.warranty.from), until: day(draft.warranty.until) },
    event: told(draft.event), noticed: told(draft.noticed),
    substitutions: draft.substitutions.map((/** @type {any} */ row) => ({ document: null, ...row })),
    changed: draft.changed || 'not_asked', changes: draft.changes.map(told),
    samples: draft.samples.map((/** @type {any} */ { bag, what, day: on, taken_by, photos, custody }) => ({ bag: bag.trim(), what, day: day(on), taken_by, photos, custody: custody.map(told) })),
    wear: wear && { ...wear, by: draft.wear_by, photos: [] }, photos: draft.photos, note: draft.note, statement, name: person.name, role: person.role }
}
