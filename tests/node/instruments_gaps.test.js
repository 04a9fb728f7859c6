// What stands of a count over a length and a widest gap, with one of the numbers wrong or left out.

import assert from 'node:assert'
import test from 'node:test'
import { gapsReading } from '../../static/instruments/gaps_reading.js'

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
