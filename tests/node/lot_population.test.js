// What an audit is drawn over: the panels that stand, whole or in part, and never one that is still to come.

import assert from 'node:assert/strict'
import test from 'node:test'
import { population, size } from '../../static/lot/population.js'
import { legHidden, stretches } from '../../static/roof/placed.js'

const runs = [{ from: 1, to: 4, state: 'released' }, { from: 5, to: 5, state: 'covered_unseen' }, { from: 6, to: 9, state: 'to_come' },
  { from: 10, to: 12, state: 'waiting' }, { from: 13, to: 13, state: 'open' }, { from: 14, to: 20, state: 'to_come' }, { from: 21, to: 21, state: 'no_seam' }]
const record = { coverage: { b: { runs }, a: { runs: [{ from: 1, to: 30, state: 'looked_at' }] }, c: { runs: [{ from: 1, to: 9, state: 'to_come' }] } } }

test('panels that stand run together whatever is known of them; what is to come, and a panel without a seam, stay out', () => {
  assert.deepEqual(stretches({ runs }), [{ from: 1, to: 5 }, { from: 10, to: 13 }])
  assert.deepEqual(stretches(undefined), [])
  assert.deepEqual([4, 5, 9, 10, 13].map((panel) => legHidden({ runs }, panel)), [true, false, false, true, false])
  assert.equal(legHidden(undefined, 1), false)
})

test('the whole job goes by area, and a part of an area cuts each of its stretches', () => {
  const whole = population(record, ['b', 'c', 'a'], {})
  assert.deepEqual(whole, [{ area: 'a', from: 1, to: 30 }, { area: 'b', from: 1, to: 5 }, { area: 'b', from: 10, to: 13 }])
  assert.equal(size(whole), 39)
  assert.deepEqual(population(record, ['b'], { b: { from: 4, to: 11 } }), [{ area: 'b', from: 4, to: 5 }, { area: 'b', from: 10, to: 11 }])
  assert.deepEqual(population(record, ['b'], { b: { from: 6, to: 9 } }), [])
})
