import assert from 'node:assert/strict'
import { test } from 'node:test'

import { moment } from '../../static/entry/moment.js'
import { uuid7 } from '../../static/entry/uuid7.js'

test('a version 7 identifier carries its time: the example of RFC 9562, appendix A.6', () => {
  // Random bits of the example, the version and variant bits left to the function: 0xcc3, 0x18c4dc0c0c07398f.
  const random = Uint8Array.from([0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f])
  assert.equal(uuid7(0x017f22e279b0, random), '017f22e2-79b0-7cc3-98c4-dc0c0c07398f')
})

test('identifiers made later sort later, and no two of a moment are the same', () => {
  const many = Array.from({ length: 500 }, () => uuid7(1))
  assert.equal(new Set(many).size, 500)
  assert.ok(many.every((id) => /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/.test(id)))
  assert.ok(many.every((id) => id < uuid7(2)))
})

test('too little randomness is our own mistake', () => {
  assert.throws(() => uuid7(1, new Uint8Array(9)), RangeError)
})

test('wall time is written with its offset, whatever the offset', () => {
  const date = new Date('2026-11-25T21:40:05.120Z')
  assert.equal(moment(date, -300), '2026-11-25T16:40:05.120-05:00')
  assert.equal(moment(date, 0), '2026-11-25T21:40:05.120+00:00')
  assert.equal(moment(date, 345), '2026-11-26T03:25:05.120+05:45')
  assert.equal(moment(date, -210), '2026-11-25T18:10:05.120-03:30')
})
