// Where on the roof a thing that waits belongs, and what was asked there: "Answer" alone tells nobody which.

import { pick, say } from '../words/say.js'
import { findItem } from '../checklist/items.js'
import { placeName } from '../roof/names.js'

/** In the record, by the kind of entry; of these the subject is the id there. */
const AMONG = /** @type {Record<string, string>} */ ({ answer: 'answers', photo: 'photos', station: 'stations', walk: 'walks', signoff: 'walks',
  area: 'areas', fit: 'fits', finding: 'findings', assignment: 'findings', concession: 'findings', lot: 'lots', disposition: 'lots', mark: 'marks',
  stop: 'stops', release: 'releases' })

/**
 * @param {any} record of its job @param {any[]} definitions @param {{kind: string, subject: string}} item a row of the outbox
 * @returns {string} `Quay slope · Panel 12, its open leg · 18 ft from the low end · edge`, after the question where one was answered; '' where the record does not tell
 */
export function itemPlace(record, definitions, { kind, subject }) {
  const thing = record[AMONG[kind]]?.[subject]
  if (!thing) return ''
  const answer = kind === 'photo' ? record.answers[thing.answer] : kind === 'answer' ? thing : null
  return [asked(definitions, answer), where(record, kind, thing)].filter(Boolean).join(' · ')
}

/** @param {any[]} definitions @param {any} answer @returns {string} */
function asked(definitions, answer) {
  const item = answer && findItem(definitions.find((one) => one.digest === answer.definition), answer.item)
  return pick(item?.question) ?? ''
}

/** @param {any} record @param {string} kind @param {any} thing @returns {string} */
function where(record, kind, thing) {
  const station = kind === 'station' ? thing : record.stations[thing.station]
  if (station) return placeName(record, station)
  const areas = kind === 'area' ? [thing.id] : thing.areas ?? [thing.area ?? record.walks[thing.walk]?.areas].flat()
  const names = areas.map((/** @type {string} */ id) => record.areas[id]?.name).filter(Boolean)
  return [...names, ...(thing.panel ? [say('place.panel', { n: thing.panel, panel: thing.panel })] : [])].join(' · ')
}
