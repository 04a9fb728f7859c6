// What was on the roof, of the entries whose signatures hold: for people to read, without a verdict of our own.

import { photoIn } from './names.js'
import { picturesOf } from './originals.js'
import { peopleOf } from './set_back.js'

/** @typedef {import('./entry.js').Entry} Entry */
/** @typedef {{name: string, role: string, phones: string[], entries: number, first: string, last: string}} Recorder */
/** @typedef {{day: string, people: string[], entries: number, photos: number}} Day */
/** @typedef {{sha256: string, file: string | null, sound: boolean, panel: number | null, distance: string, role: string, at: string, by: string}} Photo */
/** `area` empty where nobody told. @typedef {{area: string, photos: Photo[]}} Place */

/** @param {import('./check.js').Found} found @param {import('./package.js').Files} files */
export function roofOf({ tokens, hashes }, files) {
  const entries = tokens?.entries ?? []
  const people = peopleOf(tokens?.enrolments ?? [])
  const nameOf = (/** @type {string} */ id) => people.get(id)?.name || id
  /** As last said: a later entry of the same thing stands for it. @type {Map<string, Map<string, Entry>>} */
  const newest = new Map()
  for (const entry of entries) {
    if (!newest.has(entry.kind)) newest.set(entry.kind, new Map())
    newest.get(entry.kind)?.set(entry.payload.subject, entry)
  }
  /** @param {string} kind */
  const all = (kind) => [...(newest.get(kind)?.values() ?? [])]
  const answers = all('answer')
  const job = all('job').pop()?.payload.body ?? {}
  return {
    job,
    counts: {
      entries: entries.length, walks: all('walk').length, stations: all('station').length, answers: answers.length,
      failed: answers.filter(({ payload }) => payload.body.verdict?.result === 'fail').length,
      photos: new Set(entries.flatMap(picturesOf)).size,
      days: new Set(entries.map(dayOf)).size, people: new Set(entries.map((one) => one.payload.by)).size,
    },
    people: recorders(entries, people),
    days: days(entries, nameOf),
    places: places(newest, entries, files, hashes, nameOf),
    areas: new Map(all('area').map(({ payload }) => [payload.subject, String(payload.body.name ?? '')])),
    nameOf,
  }
}

/** @param {Entry} entry */
const dayOf = ({ payload }) => payload.at.slice(0, 10)

/** @param {Entry[]} entries @param {Map<string, import('./set_back.js').Person>} people @returns {Recorder[]} */
function recorders(entries, people) {
  return [...new Set(entries.map((one) => one.payload.by))].map((id) => {
    const own = entries.filter((one) => one.payload.by === id)
    const on = own.map(dayOf).sort()
    const { name, role, devices } = people.get(id) ?? { name: '', role: '', devices: [] }
    return { name: name || id, role, phones: [...new Set(devices)], entries: own.length, first: on[0], last: on[on.length - 1] }
  })
}

/** @param {Entry[]} entries @param {(id: string) => string} nameOf @returns {Day[]} */
function days(entries, nameOf) {
  return [...new Set(entries.map(dayOf))].sort().map((day) => {
    const own = entries.filter((one) => dayOf(one) === day)
    const photos = new Set(own.filter((one) => one.kind === 'photo').map((one) => one.payload.subject)).size
    return { day, people: [...new Set(own.map((one) => nameOf(one.payload.by)))], entries: own.length, photos }
  })
}

/**
 * Every photo that an entry names, under its roof area, by panel. @param {Map<string, Map<string, Entry>>} newest
 * @param {Entry[]} entries @param {import('./package.js').Files} files @param {import('./bag.js').Hashes} hashes
 * @param {(id: string) => string} nameOf @returns {Place[]}
 */
function places(newest, entries, files, hashes, nameOf) {
  const here = new Map([...files.keys()].flatMap((file) => (photoIn(file) ? [[photoIn(file), file]] : [])))
  const body = (/** @type {string} */ kind, /** @type {string} */ subject) => newest.get(kind)?.get(subject)?.payload.body
  /** @type {Map<string, Place>} */
  const found = new Map()
  const seen = new Set()
  for (const entry of [...(newest.get('photo')?.values() ?? []), ...entries]) {
    for (const sha256 of entry.kind === 'photo' ? [entry.payload.subject] : picturesOf(entry)) {
      if (seen.has(sha256)) continue
      seen.add(sha256)
      const said = entry.payload.body
      const answer = said.answer ? body('answer', said.answer) : null
      const stood = body('station', said.station ?? answer?.station) ?? said
      const walked = body('walk', said.walk)?.areas ?? []
      const area = stood.area ?? answer?.area ?? (walked.length === 1 ? walked[0] : null)
      const name = area ? String(body('area', area)?.name ?? '') : ''
      const distance = stood.from_low_end ? `${stood.from_low_end.value} ${stood.from_low_end.unit}` : ''
      const file = here.get(sha256) ?? null
      if (!found.has(name)) found.set(name, { area: name, photos: [] })
      found.get(name)?.photos.push({
        sha256, file, sound: hashes.get(file ?? '') === sha256, panel: Number.isInteger(stood.panel) ? stood.panel : null, distance,
        role: entry.kind === 'photo' ? said.role : 'other', at: entry.payload.at, by: nameOf(entry.payload.by),
      })
    }
  }
  for (const place of found.values()) place.photos.sort((a, b) => (a.panel ?? 1e9) - (b.panel ?? 1e9) || (a.at < b.at ? -1 : 1))
  return [...found.values()].sort((a, b) => Number(!a.area) - Number(!b.area) || (a.area < b.area ? -1 : 1))
}
