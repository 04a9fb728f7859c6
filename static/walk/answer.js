// One answer to one item, as an entry. A later answer to the same item names the ones it replaces.

import { enter } from '../frame/enter.js'
import { answerId } from './sort_items.js'

/**
 * @param {{job: string, record: any, walk: any, station: any | null, definition: any, item: any, choice: string | null,
 *   area?: string, reading?: any, note?: string, photos?: string[], verdict: any, draft?: string}} what
 */
export function enterAnswer({ job, record, walk, station, area, definition, item, choice, reading = null, note = '', photos = [], verdict, draft }) {
  const subject = answerId((station ?? walk).id, definition, item)
  return enter({
    job, kind: 'answer', subject, replaces: record.answers[subject]?.heads ?? [], draft,
    body: { walk: walk.id, station: station?.id ?? null, area: station?.area ?? area ?? null, definition: definition.digest, item: item.id,
      choice, reading, note: note.trim(), photos, verdict },
  })
}

/**
 * Photos of a place by role, newest last. Of a whole walk each answer has its own: a coil tag does not show the
 * approval's page.
 * @param {any} record @param {any} walk @param {any} station @param {string} role @param {string} [subject] the answer's
 */
export function photosOf(record, walk, station, role, subject) {
  return Object.values(record.photos)
    .filter((/** @type {any} */ photo) => photo.walk === walk.id && photo.station === (station?.id ?? null) && photo.role === role
      && (station || photo.answer === subject))
    .sort((/** @type {any} */ a, /** @type {any} */ b) => (a.at < b.at ? -1 : 1))
}

/** The newest photo of each role, by name. @param {any} record @param {any} walk @param {any} station @param {string} subject @returns {string[]} */
export function picturesOf(record, walk, station, subject) {
  return ['where', 'what'].flatMap((role) => photosOf(record, walk, station, role, subject).slice(-1)).map((/** @type {any} */ one) => one.sha256)
}
