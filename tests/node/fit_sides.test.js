// What is to spare on a line of a fit check, in words: the sign decides between too much and too little.

import assert from 'node:assert/strict'
import { test } from 'node:test'
import { sides } from '../../static/fit/sides.js'

const spare = (sense, value, unit = 'ft', line = 'run', verdict = 'pass') => sides({ line, verdict, rule: 'longest_run@2', pair: { sense, margin: { value, unit } } }).margin

test('a margin is to spare, short of a least, or too much for a most', () => {
  assert.equal(spare('at_most', 4.1), 'fit.to_spare')
  assert.equal(spare('at_most', -4.1), 'fit.too_much')
  assert.equal(spare('at_least', -4.1), 'fit.short')
  assert.equal(spare('between', -0.1, 'in'), 'fit.short')
  assert.equal(spare('until', -1, ''), 'fit.days_past')
  assert.equal(spare('until', 0, ''), 'fit.days_left')
})

test('what is less than a screen shows is nothing to spare, whatever the unit is written with', () => {
  for (const [value, unit] of [[0, '/12'], [-0, 'ft'], [1e-12, 'in'], [-0.0001, 'in']]) assert.equal(spare('at_least', value, unit), 'fit.exact')
  assert.equal(spare('at_least', -0.0001, 'in', 'fold_return', 'fail'), 'fit.hair')
  assert.equal(spare('at_least', 0.25, '/12'), 'fit.to_spare')
  assert.equal(spare('equal', -1, '', 'fixed_count'), '')
})

test('words and lists of words stand as they are where nothing better is known, a number that is missing as a dash', () => {
  const { limit, found } = sides({ line: 'clip_seam', rule: 'clip_seam@1', pair: { sense: 'named', limit: ['snap_lock', 'double_lock'], found: undefined } })
  assert.deepEqual([limit, found], ['snap_lock, double_lock', '—'])
})
