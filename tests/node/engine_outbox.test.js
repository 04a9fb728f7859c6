import assert from 'node:assert/strict'
import { test } from 'node:test'
import { bySequence, countRows, manifestOf, outboxRows } from '../../static/outbox/rows.js'
import { batch } from '../../static/sync/batches.js'

const entry = { person: 'p', digest: 'd'.repeat(43), job: 'j', token: 'x'.repeat(700) }
const payload = { kind: 'photo', subject: 's', at: '2026-11-25T16:40:05.120-05:00', seq: 3, body: {} }

test('an entry makes one row, a photo declared by it another', () => {
  assert.deepEqual(outboxRows(entry, payload, []).map((row) => [row.what, row.size]), [['entry', 700]])
  const photo = { sha256: 'a'.repeat(64), size: 12, type: 'image/jpeg' }
  const rows = outboxRows(entry, payload, [photo])
  assert.deepEqual(rows.map((row) => [row.what, row.name, row.size, row.state]),
    [['entry', entry.digest, 700, 'waiting'], ['photo', photo.sha256, 12, 'waiting']])
})

test('the oldest is the earliest instant, whatever the offset it was written with', () => {
  const rows = ['2026-11-25T16:40:05.120-05:00', '2026-11-25T21:40:05.119+00:00', '2026-11-26T05:00:00.000+07:00']
    .map((at) => ({ what: 'entry', state: 'refused', size: 1, at }))
  assert.equal(countRows(rows).oldest, '2026-11-25T21:40:05.119+00:00')
  assert.deepEqual([countRows(rows).entries, countRows(rows).refused, countRows([]).oldest], [3, 3, null])
})

test('the manifest names everything unsent, refused and damaged included', () => {
  const rows = ['waiting', 'refused', 'held', 'damaged'].map((state, n) =>
    ({ what: 'photo', job: 'j', name: String(n), size: n, state, at: payload.at }))
  assert.deepEqual(manifestOf(rows).items.map((item) => item.name), ['0', '1', '2', '3'])
  assert.deepEqual(Object.keys(manifestOf(rows).items[0]), ['what', 'job', 'name', 'size', 'kind', 'at'])
})

test('batches hold 25 entries or the bytes that may go at once, in order, none left out', () => {
  const rows = Array.from({ length: 60 }, (_, seq) => ({ job: 'j', seq, name: String(seq), size: seq === 30 ? 300_000 : 900 }))
  for (const most of [1, 4096, 65_536]) {
    let rest = [...rows].reverse().sort(bySequence)
    const cut = []
    for (; rest.length; rest = rest.slice(cut.at(-1).length)) cut.push(batch(rest, most))
    assert.deepEqual(cut.flat().map((row) => row.seq), rows.map((row) => row.seq))
    for (const one of cut) {
      assert.ok(one.length <= 25)
      assert.ok(one.length === 1 || one.reduce((sum, row) => sum + row.size, 0) <= most)
    }
    assert.equal(Math.max(...cut.map(({ length }) => length)), { 1: 1, 4096: 4, 65_536: 25 }[most])
  }
})
