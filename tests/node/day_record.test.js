// How a day's record begins, what is signed of it, and what it says is not told.

import assert from 'node:assert/strict'
import test from 'node:test'
import { blankDay, split } from '../../static/day_record/blank.js'
import { dayBody, joined } from '../../static/day_record/body.js'
import { PRESSED } from '../../static/day_record/pressed.js'
import { crewsOf, dayOf, ownEntry, standingOf, worded } from '../../static/day_record/there.js'
import { MAY_BE_NONE, nones, soFar, untold } from '../../static/day_record/so_far.js'
import { approved } from '../../static/day_record/material.js'
import { hour } from '../../static/day_record/weather.js'

const ANN = { id: 'ann', name: 'Ann (invented)', role: 'foreman' }
const ENTRY = { id: 's', digest: 'd', heads: ['d'], by: 'ann', at: '2026-09-14T17:00', day: '2026-09-14', crew: 'Two', head_count: 4, no_work: null, weather: [{ at: '07:30', sky: 'clear', wind: 'calm' }],
  work: 'Trim', materials: [{ what: 'coil', quantity: '2', accepted: 'accepted', stored: 'dry', photos: ['p'], gauge: '24', gauge_system: 'MSG', compared: [{ assembly: 'a' }] }],
  equipment: [{ what: 'seamer', operator: 'Ada', setting: 'die 2', hours: '8' }], submittals: '', offsite: 'none', instructions: [], delays: [], safety: 'talk; A ladder moved', tied_down: 'bundles; tarp on the hatch', photos: [], statement: 'x', name: 'Ann (invented)', role: 'foreman' }
const day = (/** @type {any} */ with_) => ({ day: '2026-09-14', crew: 'Two', crews: ['Two', 'two'], entries: [], no_work: [], ...with_ })
const record = (/** @type {any[]} */ ...days) => ({ days, walks: {}, areas: { q: { assembly: 'a' }, y: { assembly: 'b' } }, assemblies: { a: { gauge: '24' }, b: { gauge: 22 } } })

test('the next day begins with the crew, its heads and its tools, and with nothing that yesterday said', () => {
  const told = record(day({ entries: [ENTRY] }))
  const draft = blankDay(told, ANN, '2026-09-15', 'two')
  assert.equal(draft.head_count, '4')
  assert.deepEqual(draft.equipment, [{ what: 'seamer', operator: 'Ada', setting: 'die 2', hours: '' }])
  assert.equal(draft.carried, '2026-09-14')
  assert.deepEqual([draft.weather, draft.work, draft.materials, draft.safety, draft.tied_words], [[], '', [], [], ''])
  assert.equal(blankDay(told, ANN, '2026-09-13', 'Two').head_count, null, 'nothing comes back from a later day')
  assert.equal(blankDay(told, ANN, '2026-09-15', 'One').carried, '', 'another crew is another crew')
})

test('a day without work lends its tools to nobody, and a walk of the day tells the heads', () => {
  const rain = { ...ENTRY, no_work: 'rain', head_count: null, equipment: [] }
  const told = { ...record(day({ entries: [rain] })), walks: { w: { at: '2026-09-15T08:00', crew: 'Two ', head_count: 5 } } }
  assert.equal(blankDay(told, ANN, '2026-09-15', 'Two').head_count, '5')
})

test('a correction begins with all that was said and signs the same again where nothing is changed', () => {
  const draft = blankDay(record(), ANN, '', '', ENTRY)
  const { id, digest, heads, by, at, materials, ...said } = ENTRY
  const { compared, ...row } = materials[0]
  assert.deepEqual({ ...dayBody(draft, ANN, 'x', false) }, { ...said, weather: said.weather.map((one) => ({ ...one, air: undefined, metal: undefined, metal_by: undefined })), materials: [row] })
  const idle = blankDay(record(), ANN, '', '', { ...ENTRY, no_work: 'rain; and fog' })
  assert.deepEqual([idle.idle, idle.why, idle.why_words], [true, 'rain', 'and fog'])
})

test('what was pressed comes before what was typed, and both come back', () => {
  assert.equal(joined(['bundles', 'tools'], ' tarp '), 'bundles; tools; tarp')
  assert.deepEqual(split('tied', 'bundles; tarp; tools'), { tied: ['bundles', 'tools'], tied_words: 'tarp' })
  assert.equal(joined([], '  '), '')
})

test('a label says only what was read off it, and what a screen keeps for itself is not signed', () => {
  const draft = { ...blankDay(record(), ANN, '2026-09-14', 'Two'), materials: [
    { what: 'coil', quantity: ' 2 ', accepted: '', stored: '', photos: [], gauge: '', gauge_system: 'MSG', gauge_other: true, coating: ' AZ50 ', coating_other: true, coil: '' }],
    instructions: [{ by: 'Lee', said: '  ' }], delays: [{ why: 'rain', hours: '' }] }
  const body = dayBody(draft, ANN, 'x', false)
  assert.deepEqual(body.materials, [{ what: 'coil', quantity: '2', accepted: '', stored: '', photos: [], coating: 'AZ50' }])
  assert.deepEqual([body.instructions, body.delays], [[], [{ why: 'rain', hours: '' }]])
})

test('a day without work says why and nothing of work', () => {
  const draft = { ...blankDay(record(), ANN, '2026-09-14', 'Two'), why: 'rain', why_words: 'since six', work: 'left over', materials: [ENTRY.materials[0]], head_count: '4' }
  const body = dayBody(draft, ANN, 'x', true)
  assert.deepEqual([body.no_work, body.work, body.materials, body.head_count], ['rain; since six', '', [], null])
})

test('what nobody told is named, and none today is something told', () => {
  const draft = blankDay(record(), ANN, '2026-09-14', 'Two')
  assert.equal(untold(draft).length, 9)
  assert.ok(!untold({ ...draft, submittals: 'none', safety: ['none'], instructions: [{ by: '', said: 'none' }] }).some((one) => ['submittals', 'safety', 'instructions'].includes(one)))
  assert.ok(untold({ ...draft, offsite: ' ' }).includes('offsite'))
  const none = { ...draft, ...MAY_BE_NONE }
  assert.deepEqual([nones(draft), nones(none)], [[], Object.keys(MAY_BE_NONE)])
  assert.deepEqual(untold(none), ['weather', 'equipment', 'tied'])
  assert.equal(dayBody(none, ANN, 'x', false).materials[0].what, 'none')
  assert.equal(soFar({ ...draft, materials: ENTRY.materials }).materials, 'day_record.what.coil 24 MSG')
})

test('a crew is found by any of its spellings, and one\'s own record is the newest', () => {
  const told = record(day({ entries: [{ ...ENTRY, at: '2026-09-14T16:00' }, ENTRY, { ...ENTRY, by: 'bo', at: '2026-09-14T18:00' }] }), day({ day: '2026-09-15', crew: 'One', crews: ['One'] }))
  assert.equal(dayOf(told, '2026-09-14', 'two'), told.days[0])
  assert.equal(dayOf(told, '2026-09-14', ' Two '), told.days[0])
  assert.equal(dayOf(told, '2026-09-15', 'Two'), null)
  assert.equal(ownEntry(told.days[0], ANN), told.days[0].entries[1])
  assert.deepEqual(crewsOf(told), ['One', 'Two'])
  assert.equal(standingOf(null, {}), 'day_record.not_there')
})

test('words that were typed stay as they are, codes become words', () => {
  assert.equal(worded('why', 'rain; rainbow'), 'day_record.why.rain; rainbow')
  assert.equal(worded('text', 'none'), 'day_record.text.none')
  assert.ok(Object.values(PRESSED).flat().every((one) => !one.includes(';')))
})

test('the approvals of the areas worked on come first, of all where none is known', () => {
  assert.deepEqual(approved(record(), ['q'], 'gauge'), ['24'])
  assert.deepEqual(approved(record(), ['gone'], 'gauge'), ['22', '24'])
  assert.equal(hour(new Date(2026, 8, 14, 7, 5)), '07:05')
})
