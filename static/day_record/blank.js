// What a day's record begins with: an earlier version to correct, else what is likely the same as the crew's last day.

import { uuid7 } from '../entry/uuid7.js'
import { PRESSED, NONE } from './pressed.js'

const FREE = ['submittals', 'offsite']

/**
 * Weather, work, materials, delays and words are never carried over: yesterday's are not today's.
 * @param {any} record @param {any} person @param {string} day @param {string} crew @param {any} old to correct, or null
 */
export function blankDay(record, person, day, crew, old = null) {
  const last = old ?? lastOf(record, day, crew)
  const heads = old?.head_count ?? last?.head_count ?? walkHeads(record, day, crew)
  const draft = {
    id: old?.id ?? uuid7(), day: old?.day ?? day, crew: old?.crew ?? crew, carried: old || !last ? '' : last.day,
    head_count: heads === null || heads === undefined ? null : String(heads),
    idle: Boolean(old && old.no_work !== null), why: '', why_words: '', weather: old?.weather ?? [], work: old?.work ?? '',
    materials: old?.materials.map(bare) ?? [], open: -1,
    equipment: (last?.equipment ?? []).map((/** @type {any} */ row) => (old ? row : { ...row, hours: '' })),
    instructions: old?.instructions ?? [], delays: old?.delays ?? [], photos: old?.photos ?? [], waiting: '',
    ...split('safety', old?.safety ?? ''), ...split('tied', old?.tied_down ?? ''),
    ...Object.fromEntries(FREE.map((name) => [name, old?.[name] ?? ''])),
  }
  const why = split('why', old?.no_work ?? '')
  return { ...draft, why: why.why[0] ?? '', why_words: why.why_words }
}

/** What was pressed, and what was typed behind it. @param {string} name of the group @param {string} text */
export function split(name, text) {
  const codes = [...(/** @type {any} */ (PRESSED)[name]), NONE]
  const parts = text.split('; ').filter(Boolean)
  return { [name]: parts.filter((one) => codes.includes(one)), [`${name}_words`]: parts.filter((one) => !codes.includes(one)).join('; ') }
}

/** What the record added to a material is not said again. @param {any} row */
function bare({ compared, ...row }) {
  return row
}

/** The crew's newest record of a day with work, before or on that day. @param {any} record @param {string} day @param {string} crew */
function lastOf(record, day, crew) {
  const days = (record.days ?? []).filter((/** @type {any} */ one) => one.day <= day && one.crews.some((/** @type {string} */ name) => name.trim() === crew.trim()))
  const worked = days.flatMap((/** @type {any} */ one) => one.entries).filter((/** @type {any} */ one) => one.no_work === null)
  return worked.sort((/** @type {any} */ a, /** @type {any} */ b) => (a.day < b.day || (a.day === b.day && a.at < b.at) ? 1 : -1))[0] ?? null
}

/** The head count that a walk of that day told. @param {any} record @param {string} day @param {string} crew */
function walkHeads(record, day, crew) {
  const walks = Object.values(record.walks).filter((/** @type {any} */ one) => one.at.slice(0, 10) === day && one.crew?.trim() === crew.trim())
  return /** @type {any} */ (walks.sort((/** @type {any} */ a, /** @type {any} */ b) => (a.at < b.at ? 1 : -1))[0])?.head_count ?? null
}
