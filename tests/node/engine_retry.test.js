import assert from 'node:assert/strict'
import { test } from 'node:test'
import { DELAYS, REFUSED_DELAYS, isDue, outcome, waitFor } from '../../static/sync/retry.js'
import { waitAfter, waitLeft } from '../../static/people/pin.js'

test('waits grow, repeat the last, and stay between half and the whole', () => {
  assert.equal(waitFor(1, DELAYS, 0), 500)
  assert.equal(waitFor(1, DELAYS, 1), 1000)
  assert.equal(waitFor(99, DELAYS, 1), DELAYS.at(-1))
  for (let n = 1; n < 10; n += 1) assert.ok(waitFor(n, DELAYS, 0) <= waitFor(n + 1, DELAYS, 0))
})

test('no status means that an item may be given up', () => {
  for (let status = 0; status < 600; status += 1) assert.ok(['done', 'again', 'sign', 'item'].includes(outcome(status)))
  assert.deepEqual([200, 204].map(outcome), ['done', 'done'])
  assert.deepEqual([0, 301, 408, 429, 500, 502, 503].map(outcome), Array(7).fill('again'))
  assert.deepEqual([401, 403].map(outcome), ['sign', 'sign'])
  assert.deepEqual([400, 404, 409, 413, 422].map(outcome), Array(5).fill('item'))
})

test('a refused item is offered again after its wait, at once when a person asks, and whatever the clock did', () => {
  const row = { state: 'refused', next: 1_000_000 }
  assert.equal(isDue(row, 999_999, false), false)
  assert.equal(isDue(row, 1_000_000, false), true)
  assert.equal(isDue(row, 0, true), true)
  const years = 5 * 365 * 86_400_000
  assert.equal(isDue({ state: 'refused', next: years }, years - REFUSED_DELAYS.at(-1) - 1, false), true)
  assert.equal(isDue({ state: 'waiting' }, 0, false), true)
  assert.equal(isDue({ state: 'damaged' }, 0, true), false)
})

test('three wrong PINs are free, then the wait doubles up to five minutes', () => {
  assert.deepEqual([1, 2, 3, 4, 5, 99].map(waitAfter), [0, 0, 5000, 10_000, 20_000, 300_000])
})

test('a clock set back cannot lock anybody out for longer than the wait', () => {
  assert.equal(waitLeft({ wrong: 3, until: 1e12 }, 1e12 - 2000), 2000)
  assert.equal(waitLeft({ wrong: 3, until: 1e12 }, 0), 5000)
  assert.equal(waitLeft({ wrong: 3, until: 1e12 }, 2e12), 0)
})
