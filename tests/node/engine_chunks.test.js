import assert from 'node:assert/strict'
import { test } from 'node:test'
import { CHUNK, chunkPlan, nextPiece } from '../../static/photo/chunks.js'
import { header } from '../../static/photo/header.js'

test('chunks cover every byte once, at every awkward size', () => {
  for (const size of [0, 1, CHUNK - 1, CHUNK, CHUNK + 1, 25_000_000]) {
    const plan = chunkPlan(size)
    let end = 0
    for (const [n, chunk] of plan.entries()) {
      assert.deepEqual([chunk.n, chunk.from], [n, end])
      end = chunk.to
    }
    assert.equal(end, size)
  }
})

test('pieces to send follow each other from any offset, each inside one stored chunk', () => {
  const size = 3 * CHUNK + 1234
  for (const piece of [32 * 1024, 100_000, CHUNK]) {
    for (let offset = 777; offset < size;) {
      const { n, within, length } = nextPiece(size, offset, piece)
      assert.ok(length > 0 && length <= piece)
      assert.equal(n * CHUNK + within, offset)
      assert.ok(within + length <= CHUNK && offset + length <= size)
      offset += length
    }
  }
})

const bytes = (/** @type {number[]} */ ...list) => Uint8Array.from(list)

test('the first bytes say what a picture is, not its name', () => {
  const jpeg = bytes(0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2, 0xff, 0xc0, 0, 11, 8, 0x01, 0x02, 0x03, 0x04, 1, 1, 1, 1)
  assert.deepEqual(header(jpeg, 'text/plain'), { type: 'image/jpeg', width: 0x0304, height: 0x0102 })
  assert.equal(header(bytes(1, 2, 3), 'text/plain').type, null)
  assert.equal(header(bytes(1, 2, 3), 'image/x-odd').type, 'image/x-odd')
  const heic = Uint8Array.from('\0\0\0\x18ftypheic', (sign) => sign.charCodeAt(0))
  assert.equal(header(heic, '').type, 'image/heic')
})

test('no broken header stops the reading', () => {
  const good = [0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2, 0xff, 0xc0, 0, 11, 8, 1, 2, 3, 4, 1, 1, 1, 1]
  for (let cut = 0; cut <= good.length; cut += 1) header(bytes(...good.slice(0, cut)), 'image/jpeg')
  for (let at = 0; at < good.length; at += 1) {
    for (const byte of [0, 0xff]) header(bytes(...good.with(at, byte)), 'image/jpeg')
  }
})
