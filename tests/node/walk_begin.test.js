// What a person may begin, what is likely, and what is asked of a walk over several areas.

import assert from 'node:assert/strict'
import test from 'node:test'
import { forWalk, likely, mayBegin } from '../../static/checklist/applies.js'
import { asked, atOnce } from '../../static/walk/sort_items.js'
import { photosOf, picturesOf } from '../../static/walk/pictures.js'

const made = (id, per, performed_by = ['foreman', 'inspector']) => ({ id, per, performed_by, digest: `d-${id}`, applies: {}, items: [] })
const all = [made('deck', 'area'), made('flange', 'station'), made('audit', 'walk', ['inspector']), made('dusk', 'walk')]
const foreman = { role: 'foreman' }

test('whole walks come first, then places, then what is asked of one area; each role sees its own', () => {
  assert.deepEqual(mayBegin(all, foreman).map((one) => one.id), ['dusk', 'flange', 'deck'])
  assert.deepEqual(mayBegin(all, { role: 'inspector' }).map((one) => one.id), ['audit', 'dusk', 'flange', 'deck'])
  assert.deepEqual(mayBegin(all, { role: 'reviewer' }), [])
})

test('from the ground only what is asked of one area can begin', () => {
  assert.deepEqual(mayBegin(all, foreman, true).map((one) => one.id), ['deck'])
})

test('what was walked last is likely again, but not what is asked once of an area', () => {
  const mine = mayBegin(all, foreman)
  assert.equal(likely(mine, []).id, 'dusk')
  assert.equal(likely(mine, [{ definition: 'd-deck' }, { definition: 'd-flange' }]).id, 'flange')
  assert.equal(likely(mine, [{ definition: 'a checklist that the job no longer pins' }]).id, 'dusk')
  assert.equal(likely([], []), null)
})

test('a walk is asked its own checklist, never one that is made for places', () => {
  assert.deepEqual(forWalk({ definition: 'd-deck' }, all).map((one) => one.id), ['deck'])
  assert.deepEqual(forWalk({ definition: 'd-flange' }, all), [])
})

const item = (id, attachment) => ({ id, quick: true, applies: attachment ? { attachment: [attachment] } : {} })
const dusk = { id: 'dusk', items: [item('all'), item('slots', 'nail_flange'), item('tabs', 'expansion_clip')] }
const record = {
  assemblies: { f: { attachment: 'nail_flange' }, c: { attachment: 'expansion_clip' } },
  areas: { quay: { assembly: 'f' }, yard: { assembly: 'c' }, bare: { assembly: 'not arrived' } },
  answers: { 'w/dusk/all': {} },
}
const ids = (items) => items.map((one) => one.id)

test('a whole walk is asked what speaks of any of its areas, and everything where one is not known', () => {
  assert.deepEqual(ids(asked(record, dusk, { areas: ['quay'] }, null)), ['all', 'slots'])
  assert.deepEqual(ids(asked(record, dusk, { areas: ['quay', 'yard'] }, null)), ['all', 'slots', 'tabs'])
  assert.deepEqual(ids(asked(record, dusk, { areas: ['bare'] }, null)), ['all', 'slots', 'tabs'])
})

test('a place is asked what speaks of its own area, whatever else the walk goes over', () => {
  const walk = { id: 'w', areas: ['quay', 'yard'] }
  assert.deepEqual(ids(asked(record, dusk, walk, { area: 'yard' })), ['all', 'tabs'])
  assert.deepEqual(ids(atOnce(record, dusk, { ...walk, areas: ['quay'] }, null)), ['slots'])
})

const photo = (sha256, station, answer, role, at) => ({ sha256, walk: 'w', station, answer, role, at })
const pictures = { photos: Object.fromEntries([
  photo('tag', null, 'w/dusk/coil', 'what', '1'), photo('page', null, 'w/dusk/approval', 'what', '2'),
  photo('near', 's', 'any', 'what', '3'), photo('newer', 's', null, 'what', '4'), photo('panel', 's', null, 'where', '3'),
].map((one) => [one.sha256, one])) }

test('each answer of a whole walk has pictures of its own, a place shares the newest pair', () => {
  assert.deepEqual(picturesOf(pictures, { id: 'w' }, null, 'w/dusk/approval'), ['page'])
  assert.deepEqual(picturesOf(pictures, { id: 'w' }, null, 'w/dusk/other'), [])
  assert.deepEqual(picturesOf(pictures, { id: 'w' }, { id: 's' }, 's/flange/x'), ['panel', 'newer'])
  assert.equal(photosOf(pictures, { id: 'w' }, { id: 's' }, 'what').length, 2)
})
