// What is known before anything is measured: whether it can decide here, in which unit, by which steps.

import assert from 'node:assert/strict'
import test from 'node:test'
import { mark } from '../../static/frame/amount.js'
import { decides } from '../../static/instruments/decides.js'
import { stepsOf, unitFor } from '../../static/instruments/unit_for.js'

const inches = (values) => ({ values: Object.fromEntries(Object.entries(values).map(([name, value]) => [name, { value, unit: 'in' }])) })

test('one word decides only where its third is narrower than the window is wide', () => {
  // Play 0.405 in, so a third of the slot is known to 0.135 in either way; the rest of the bound is the metal's.
  assert.equal(decides(inches({ low: -0.16, high: 0.16, play: 0.405, bound: 0.145 })), '')
  assert.equal(decides(inches({ low: -0.06, high: 0.12, play: 0.405, bound: 0.145 })), 'word')
})

test('a temperature too rough for the window decides nothing by any reading', () => {
  assert.equal(decides(inches({ low: -0.06, high: 0.12, play: 0.405, bound: 0.135 + 0.1 })), 'metal')
})

test('where no place is free there is nothing to measure, and without an answer nothing is said', () => {
  assert.equal(decides(inches({ low: 0.1, high: -0.1, play: 0.405, bound: 0.145 })), 'no_window')
  for (const none of [null, { values: {} }, inches({ low: -1, high: 1, play: 0.4 })]) assert.equal(decides(none), '')
})

test('a reading has the unit and the step of its item, and ten of them in the longer press', () => {
  const us = { job: { units: 'US' } }
  const item = { unit: { US: 'in', SI: 'mm' }, step: { US: '0.07', SI: '0.5' } }
  assert.deepEqual([unitFor(item, us), unitFor(item, { job: { units: 'SI' } }), unitFor({}, us)], ['in', 'mm', 'in'])
  assert.deepEqual(stepsOf(item, us, 'in'), [0.07, 0.7])
  assert.deepEqual(stepsOf({}, us, 'in', true), [0.0001, 0.001])
  assert.deepEqual(stepsOf({}, us, 'psf'), [1])
})

test('a step in inches is named as a tape names it, and in nothing else', () => {
  assert.deepEqual([0.0625, 0.25, 0.5, 0.3125, 1, 0.001].map((one) => mark(one, 'in')), ['1/16', '1/4', '1/2', '5/16', '1', '0.001'])
  assert.deepEqual([mark(0.5, 'm'), mark(0.25, undefined)], ['0.5', '0.25'])
})
