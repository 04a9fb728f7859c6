// What stands of a count over a length and a widest gap, with one of the numbers wrong or left out.

import assert from 'node:assert'
import test from 'node:test'
import { gapsReading, meanAbove } from '../../static/instruments/gaps_reading.js'

const KNOWN = { way: 'count', count: '11', over: '10', widest: '12', text: '', wrong: {} }
const read = (/** @type {any} */ told) => gapsReading({ ...KNOWN, ...told }, 'in', 'ft', 200)
const WIDEST = { gaps: [{ value: '12', unit: 'in' }] }

test('a count, its length and the widest gap are one reading', () => {
  assert.deepEqual(read({}), { ...WIDEST, count: 11, over: { value: '10', unit: 'ft' } })
})

test('a field left empty is none, and what else was measured stands', () => {
  assert.deepEqual(read({ count: null, wrong: { count: false } }), WIDEST)
  assert.equal(read({ count: null, widest: null }), null)
})

test('beside a number that stands wrong nothing is a reading', () => {
  for (const name of ['count', 'over', 'widest']) assert.equal(read({ [name]: null, wrong: { [name]: true } }), null)
})

test('half a fastener is no count, and leaves no widest gap to be judged alone', () => {
  assert.equal(read({ count: '11.5' }), null)
})

test('no widest gap is less than the mean: feet typed for inches, or a gap picked at will, is no reading', () => {
  for (const told of [{ over: '120' }, { widest: '6' }, { widest: '11.7' }]) assert.equal(read(told), null)
  assert.notEqual(read({ widest: '11.8' }), null, 'a length rounded to the foot')
  assert.equal(meanAbove({ count: '11', over: '120', widest: '12.5' }, 'in', 'ft'), '144.00')
  assert.equal(meanAbove({ count: '11', over: '3', widest: '250' }, 'mm', 'm'), '300')
  assert.equal(meanAbove({ count: '1', over: '10', widest: '12' }, 'in', 'ft'), null)
  assert.notEqual(read({ over: '120', widest: null }), null, 'a count alone says what it says')
})
