// A phone laid on a slope: what its orientation says, and what becomes of it when it is turned end for end.

import assert from 'node:assert/strict'
import test from 'node:test'
import { asReadings, askew, lying, notTurned, wayOf } from '../../static/instruments/lying.js'

test('an orientation that nobody measured, or of a phone that does not lie, is no reading', () => {
  assert.equal(lying({ beta: null, gamma: null }), null)
  assert.equal(lying({ beta: NaN, gamma: 0 }), null)
  assert.equal(lying({ beta: 120, gamma: 0 }), null)
  assert.deepEqual(lying({ beta: 18.4, gamma: null }), { along: 18.4, across: 0 })
})

test('both ways round rise, and the own error of the phone stays with its sign', () => {
  const first = [18.9, 18.9] // 18.4 and an own error of +0.5
  const turned = [-17.9, -17.9]
  assert.equal(wayOf(first), 1)
  assert.deepEqual(asReadings(first, 1).map((one) => one.value), ['18.9', '18.9'])
  assert.deepEqual(asReadings(turned, -1).map((one) => one.value), ['17.9', '17.9'])
  assert.equal(wayOf(turned), -1)
  assert.deepEqual(asReadings([0.004, -0.004, 10], 1).map((one) => one.value), ['0', '0', '10'])
})

test('a phone that was not turned is told from one that was', () => {
  assert.equal(notTurned([18.9, 18.8], 1), true)
  assert.equal(notTurned([-17.9, -18], 1), false)
  assert.equal(notTurned([0.4, 0.5], 1), false, 'too flat to tell')
  assert.equal(askew(4) || !askew(-40), false)
})
