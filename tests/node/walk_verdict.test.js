// A verdict on its way into an entry and back onto the screen.

import assert from 'node:assert/strict'
import test from 'node:test'
import { computed, recorded } from '../../static/walk/verdict.js'

const answer = (offset, ridge) => ({ rule: 'slot@2', verdict: 'pass', reason: null, inputs: { taps: { screw: [1.5, 2] } },
  values: { offset: { value: offset, unit: 'in' }, toward_ridge: { value: ridge, unit: 'in' }, bound: { value: 1e-7, unit: 'in' } } })

test('no number is lost on the way into an entry and out of it', () => {
  const kept = computed(answer(0.1, 0.1), 'book')
  assert.deepEqual([kept.values.bound.value, kept.inputs.taps.screw], ['0.0000001', ['1.5', 2]])
  const shown = recorded(kept)
  assert.deepEqual([shown.values.bound.value, shown.verdict, shown.rule], [1e-7, 'pass', 'slot@2'])
})

test('a slot is drawn again with its free end where it was', () => {
  assert.equal(recorded(computed(answer(0.1, 0.1), '')).understood.free_end, 'ridge')
  assert.equal(recorded(computed(answer(0.1, -0.1), '')).understood.free_end, 'eave')
})

test('what was only computed comes back without a verdict', () => {
  assert.equal(recorded(computed({ rule: 'movement@1', values: {}, inputs: {} }, '')).verdict, null)
})

test('a word and a list of numbers stay what they are on the way in and out', () => {
  const values = { letter: { value: 'F', unit: '' }, indices: { value: [45, 0, 19], unit: '' } }
  const kept = computed({ rule: 'plan@1', values, inputs: { aql: '2.5' } }, 'book')
  assert.deepEqual(kept.values, { letter: { value: 'F', unit: '' }, indices: { value: ['45', '0', '19'], unit: '' } })
  assert.deepEqual(recorded(kept).values, values)
})
