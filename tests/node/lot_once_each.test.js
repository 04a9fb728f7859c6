// What is said of a panel that failed in more than one severity.

import assert from 'node:assert/strict'
import test from 'node:test'
import { onceEach } from '../../static/lot/once_each.js'

const failed = (panel, severity, bounded, toward_start, toward_end) => ({ panel, severity, bounded, toward_start, toward_end })

test('a panel that failed twice alike is said once, and another panel for itself', () => {
  const all = [failed(32, 'critical', false, 0, 0), failed(32, 'major', false, 0, 0), failed(12, 'major', true, 3, 3)]
  assert.deepEqual(onceEach(all), [all[0], all[2]])
})

test('of two the one that is further from done stands', () => {
  const all = [failed(5, 'critical', true, 3, 3), failed(5, 'major', false, 3, 1), failed(5, 'minor', false, 3, 2)]
  assert.deepEqual(onceEach(all), [all[1]])
})
