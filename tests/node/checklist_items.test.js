// Which items are asked where, on the released definitions themselves.

import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import test from 'node:test'
import { applies, findItem, isQuick, itemsFor, needsArea } from '../../static/checklist/items.js'

const released = JSON.parse(readFileSync(new URL('../vectors/definitions.json', import.meta.url), 'utf8'))
const definition = (id) => JSON.parse(released.find((one) => one.id === id).compiled)
const clip = definition('clip-fastening')
const ids = (items) => items.map((item) => item.id)

test('a definition speaks of the attachments it names, and of all when it names none', () => {
  assert.equal(applies(clip, { attachment: 'expansion_clip' }), true)
  assert.equal(applies(clip, { attachment: 'nail_flange' }), false)
  assert.equal(applies(clip, null), false)
  assert.equal(applies(definition('end-of-day-walk'), null), true)
})

test('the place of a tab is asked of expansion clips only, sliding of fixed clips only', () => {
  const expansion = ids(itemsFor(clip, { attachment: 'expansion_clip' }))
  const fixed = ids(itemsFor(clip, { attachment: 'fixed_clip' }))
  assert.deepEqual([expansion.includes('tab_place'), fixed.includes('tab_place')], [true, false])
  assert.deepEqual([expansion.includes('panel_slides'), fixed.includes('panel_slides')], [false, true])
  assert.equal(itemsFor(clip, null).length, clip.items.length)
})

test('an item is found by its id, and nothing is found where there is none', () => {
  assert.equal(findItem(clip, 'hook').severity, 'critical')
  assert.equal(findItem(clip, 'hoook'), null)
  assert.equal(findItem(null, 'hook'), null)
})

test('one press never answers a critical item', () => {
  const quick = clip.items.filter(isQuick)
  assert.ok(quick.length >= 4)
  assert.deepEqual(quick.filter((item) => item.severity === 'critical' || item.rule), [])
})

test('what is measured against the assembly on a whole walk needs a roof area', () => {
  assert.deepEqual(ids(definition('end-of-day-walk').items.filter(needsArea)), ['hem_gap', 'coil_thickness', 'slope'])
})
