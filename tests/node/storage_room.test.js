import assert from 'node:assert/strict'
import { test } from 'node:test'
import { droppable } from '../../static/storage/room.js'

const [A, B, C, D, E] = 'abcde'.split('').map((sign) => sign.repeat(64))
const photo = (/** @type {string} */ sha256, /** @type {string} */ day, fetched = false) => ({ sha256, at: `2026-11-${day}T08:00:00.000Z`, fetched })
const receipt = (/** @type {string} */ name, /** @type {string} */ day) => ({ what: 'photo', name, at: Date.parse(`2026-11-${day}T09:00:00.000Z`) })
const none = { drafts: [], outbox: [], photos: [], receipts: [] }

test('first what was fetched goes, then what the office has, each the oldest first', () => {
  const photos = [photo(A, '05', true), photo(B, '01'), photo(C, '02'), photo(D, '04', true)]
  assert.deepEqual(droppable({ ...none, photos, receipts: [receipt(C, '02'), receipt(B, '03')] }), [D, A, C, B])
})

test('what waits, what a draft holds, and what nobody confirmed is never dropped', () => {
  const photos = [photo(A, '01'), photo(B, '01'), photo(C, '01'), photo(D, '01', true)]
  const receipts = [receipt(A, '02'), receipt(B, '02')]
  const rows = { photos, receipts, outbox: [{ name: A }, { name: D }], drafts: [{ value: { shots: { photos: [B] } } }] }
  assert.deepEqual(droppable(rows), [])
})

test('what was fetched and then taken here, and what was kept anew since its receipt, stays', () => {
  const photos = [photo(A, '01', true), photo(A, '02'), photo(B, '09'), photo(E, '01')]
  assert.deepEqual(droppable({ ...none, photos, receipts: [receipt(B, '03'), receipt(E, '01')] }), [E])
})
