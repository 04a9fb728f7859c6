// In which order a person meets what was found.

import assert from 'node:assert/strict'
import test from 'node:test'
import { findingsInOrder } from '../../static/roof/order.js'

test('findings stand by area, panel and distance from the low end, those of a whole walk last', () => {
  const station = (id, area, panel, ft) => [id, { id, area, panel, from_low_end: { value: ft, unit: 'ft' } }]
  const record = {
    areas: { a: { name: 'Wing' }, b: { name: 'Back slope' } },
    stations: Object.fromEntries([station('s1', 'a', 2, '9.5'), station('s2', 'b', 12, '3'), station('s3', 'b', 2, '30'), station('s4', 'b', 2, '4')]),
    findings: Object.fromEntries([['f0', null], ['f1', 's1'], ['f2', 's2'], ['f3', 's3'], ['f4', 's4']].map(([id, station]) => [id, { id, station }])),
  }
  assert.deepEqual(findingsInOrder(record).map((one) => one.id), ['f4', 'f3', 'f2', 'f1', 'f0'])
})
