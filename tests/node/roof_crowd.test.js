// Which marks of a crowded plan are drawn, and in which order.

import assert from 'node:assert/strict'
import test from 'node:test'
import { uncrowded } from '../../static/roof/crowd.js'

const mark = (x, state) => ({ x, y: 0, state })

test('what does not pass is always drawn, and after every pass, however many passes stand on it', () => {
  const marks = [mark(0, 'fail'), mark(1, 'pass'), mark(2, 'pass'), mark(1, 'unsafe'), mark(60, 'pass')]
  assert.deepEqual(uncrowded(marks, 20), [mark(60, 'pass'), mark(0, 'fail'), mark(1, 'unsafe')])
})

test('of passes that touch each other one is drawn, and all of them where they have room', () => {
  const row = [0, 15, 30, 45].map((x) => mark(x, 'pass'))
  assert.deepEqual(uncrowded(row, 20), [row[0], row[2]])
  assert.deepEqual(uncrowded(row, 15), row)
})
