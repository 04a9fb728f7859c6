// Which pictures somebody needs on the roof: those of findings still to be done on their own lists. Pure; states are the
// record's.

import { plainCrew } from './crew.js'

const TO_DO = ['open', 'corrected']

/**
 * @param {any} record @param {string} person id
 * @param {boolean} part whether they see a part of the job: then every finding they see is theirs
 * @returns {string[]} sha256 each, once: those of the finding spoken of last first, and of each the last taken first
 */
export function ownPictures(record, person, part) {
  const crews = ownCrews(record, person)
  const own = Object.values(record.findings).filter((/** @type {any} */ one) => TO_DO.includes(one.state)
    && (part || one.opened?.by === person || (one.crew && crews.has(plainCrew(one.crew)))))
  const last = (/** @type {any} */ one) => Math.max(...[one.opened, ...one.history].map((step) => Date.parse(step?.at ?? '') || 0))
  own.sort((/** @type {any} */ a, /** @type {any} */ b) => last(b) - last(a))
  return [...new Set(own.flatMap((/** @type {any} */ one) => [...one.photos, ...one.corrections.flatMap((/** @type {any} */ made) => made.photos)].reverse()))]
}

/** The crews that somebody walked, planned or wrote a day for. @param {any} record @param {string} person @returns {Set<string>} */
function ownCrews(record, person) {
  const told = [...Object.values(record.walks), ...Object.values(record.lots), ...(record.days ?? []).flatMap((/** @type {any} */ day) => day.entries.map((/** @type {any} */ one) => ({ ...one, crew: day.crew })))]
  return new Set(told.filter((one) => one.by === person && plainCrew(one.crew)).map((one) => plainCrew(one.crew)))
}
