// What a draft tells so far, part by part, in one line each; and what nobody tells of at all.

import { say } from '../words/say.js'
import { joined } from './body.js'
import { NONE } from './pressed.js'
import { worded } from './there.js'

/** Parts of which "none today" is an answer, and what their draft then holds. @type {Record<string, any>} */
export const MAY_BE_NONE = {
  materials: [{ what: NONE, quantity: '', accepted: '', stored: '', photos: [] }], instructions: [{ by: '', said: NONE }], delays: [{ why: NONE, hours: '' }],
  submittals: NONE, offsite: NONE, safety: [NONE],
}

/** @param {any} draft @returns {Record<string, string>} empty where nothing is told */
export function soFar(draft) {
  return {
    work: draft.work.trim(),
    materials: draft.materials.map((/** @type {any} */ row) => [worded('what', row.what), row.gauge && `${row.gauge} ${row.gauge_system ?? ''}`.trim()].filter(Boolean).join(' ')).join('; '),
    equipment: draft.equipment.map((/** @type {any} */ row) => [worded('equipment', row.what), row.operator, row.setting].filter(Boolean).join(', ')).join('; '),
    instructions: draft.instructions.filter((/** @type {any} */ row) => row.said.trim()).map((/** @type {any} */ row) => [row.by, worded('text', row.said)].filter(Boolean).join(': ')).join('; '),
    delays: draft.delays.map((/** @type {any} */ row) => [worded('why', row.why), row.hours && `${row.hours} h`].filter(Boolean).join(' ')).join('; '),
    submittals: worded('text', draft.submittals.trim()), offsite: worded('text', draft.offsite.trim()),
    safety: worded('safety', joined(draft.safety, draft.safety_words)), tied: worded('tied', joined(draft.tied, draft.tied_words)),
    photos: draft.photos.length ? say('day_record.photos.n', { n: draft.photos.length }) : '',
  }
}

/** What may stay untold, and the report then says so: its words' names. @param {any} draft @returns {string[]} */
export function untold(draft) {
  const { work, photos, ...told } = soFar(draft)
  return [...(draft.weather.length ? [] : ['weather']), ...Object.keys(told).filter((name) => !told[name])]
}

/** The parts that say "none today". @param {any} draft @returns {string[]} */
export function nones(draft) {
  return Object.keys(MAY_BE_NONE).filter((name) => JSON.stringify(draft[name]) === JSON.stringify(MAY_BE_NONE[name]))
}
