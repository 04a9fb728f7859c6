// What may be done with a finding next: by whom, and what never.

import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import test from 'node:test'
import { COMMON, causesOf } from '../../static/checklist/causes.js'
import { dayAfter } from '../../static/finding/day_after.js'
import { from } from '../../static/finding/raised_from.js'
import { fainter, stronger } from '../../static/finding/veil.js'
import { forRecheck, standing, steps, waiting } from '../../static/finding/offers.js'

const AUTHORITY = { assignment: ['foreman', 'inspector'], correction: ['foreman', 'inspector'], recheck: ['foreman', 'inspector'], concession: ['engineer'], reopening: ['foreman', 'inspector', 'engineer', 'owner'] }
const correction = (digest, by, state = 'waiting') => ({ digest, by, state })
const finding = (state, more = {}) => ({ state, corrections: [], rechecks: [], concession: null, ...more })
const person = (id, role) => ({ id, role })
const offered = (one, who) => Object.entries(steps(one, who, AUTHORITY)).filter(([, { offered: yes }]) => yes).map(([kind]) => kind).sort()

test('who put it right is not asked to look at it again, and is told why', () => {
  const corrected = finding('corrected', { corrections: [correction('c1', 'ann')] })
  assert.deepEqual(steps(corrected, person('ann', 'foreman'), AUTHORITY).recheck, { offered: false, why: 'own' })
  assert.equal(forRecheck(corrected, person('ann', 'foreman')), null)
  assert.deepEqual(steps(corrected, person('ben', 'inspector'), AUTHORITY).recheck, { offered: true, why: '' })
  assert.deepEqual(steps(corrected, person('eva', 'engineer'), AUTHORITY).recheck, { offered: false, why: 'role' })
})

test('of several corrections the newest by somebody else is looked at, and none that was found bad, reopened or without effect', () => {
  const two = finding('corrected', { corrections: [correction('c1', 'ben'), correction('c2', 'ann'), correction('c3', 'ben')] })
  assert.deepEqual(waiting(two).map(({ digest }) => digest), ['c3', 'c2', 'c1'])
  assert.equal(forRecheck(two, person('ben', 'inspector')).digest, 'c2')
  const spent = finding('corrected', { corrections: ['not_good', 'spent', 'no_effect'].map((state, n) => correction(`c${n}`, 'ben', state)) })
  assert.equal(forRecheck(spent, person('ann', 'foreman')), null)
  assert.deepEqual(waiting(finding('closed', { corrections: [correction('c1', 'ann', 'good')] })), [])
})

test('an open finding is put right or given to somebody, a closed one opened again, a withdrawn one left alone', () => {
  assert.deepEqual(offered(finding('open'), person('ann', 'foreman')), ['assignment', 'correction'])
  assert.deepEqual(offered(finding('open'), person('eva', 'engineer')), ['concession'])
  assert.deepEqual(offered(finding('closed'), person('owen', 'owner')), ['reopening'])
  assert.deepEqual(offered(finding('conceded'), person('rex', 'reviewer')), [])
  assert.deepEqual(offered(finding('withdrawn'), person('ann', 'foreman')), [])
})

test('a reopening names every good look and concession that stands, and nothing else', () => {
  const said = (digest, result, counts = true, spent = false) => ({ digest, result, counts, spent })
  const closed = finding('closed', { rechecks: [said('r1', 'good'), said('r2', 'good', false), said('r3', 'good', true, true), said('r4', 'not_good')], concession: { digest: 'k1', counts: true, spent: false } })
  assert.deepEqual(standing(closed), ['r1', 'k1'])
  assert.deepEqual(standing(finding('conceded', { concession: { digest: 'k1', counts: false, spent: false } })), [])
})

test('a day counts on by the calendar, over the end of a month and a change of the clocks', () => {
  assert.equal(dayAfter('2026-11-28', 3), '2026-12-01')
  assert.equal(dayAfter('2028-02-28', 1), '2028-02-29')
  assert.equal(dayAfter('2026-03-07', 1), '2026-03-08')
})

test('the first picture is made fainter and stronger in steps that end', () => {
  assert.deepEqual([35, 50, 80, 37].map(stronger), [50, 65, 80, 50])
  assert.deepEqual([35, 50, 0, 37].map(fainter), [0, 35, 0, 35])
})

test('a finding by hand knows the walk, the area or the panel it was begun from', () => {
  const record = { walks: { w: { areas: ['a'] }, v: { areas: ['a', 'b'] } }, areas: { a: {}, b: {} } }
  assert.deepEqual(from(record, ['walk', 'w']), { walk: 'w', area: 'a', panel: null, areas: ['a'], back: ['walk', 'w'] })
  assert.deepEqual([from(record, ['walk', 'v']).area, from(record, ['walk', 'v']).areas], [null, ['a', 'b']])
  assert.deepEqual(from(record, ['panel', 'b', '12']), { walk: null, area: 'b', panel: '12', areas: null, back: ['plan', 'b', '12'] })
  assert.equal(from(record, ['panel', 'b', 'x1']).panel, null)
  for (const strange of [[], ['walk', 'no'], ['panel', 'no', '1'], ['roof', 'a']]) assert.deepEqual(from(record, strange).back, ['findings'])
})

test('a definition without causes of its own has the common list, and each of its codes has words', () => {
  const words = JSON.parse(readFileSync(new URL('../../static/words/finding.json', import.meta.url), 'utf8'))
  const readme = readFileSync(new URL('../../checklists/README.md', import.meta.url), 'utf8')
  for (const none of [null, undefined, {}, { causes: [] }]) assert.deepEqual(causesOf(none).map(({ code }) => code), COMMON)
  for (const code of COMMON) assert.ok(words[`cause.${code}`]?.en && words[`cause.${code}`].es && readme.includes(`\`${code}\``), code)
  assert.deepEqual(Object.keys(words).filter((key) => key.startsWith('cause.')).length, COMMON.length)
  assert.deepEqual(causesOf({ causes: [{ code: 'clutch', en: 'Clutch', es: 'Embrague' }] }), [{ code: 'clutch', en: 'Clutch', es: 'Embrague' }])
})
