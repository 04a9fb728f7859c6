import assert from 'node:assert/strict'
import { test } from 'node:test'
import { CHUNK, nextPiece } from '../../static/photo/chunks.js'
import { adapt } from '../../static/sync/pace.js'

const PIECES = { least: 8 * 1024, most: CHUNK }
const FIRST = 16 * 1024
const AROUND = 800 // bytes of a request's and an answer's headers
const PHOTO = 4_000_000

test('pieces grow to 256 KiB on a good link, shrink to 8 KiB on a bad one, and stay where a second or two is enough', () => {
  let piece = FIRST
  for (let n = 0; n < 9; n += 1) piece = adapt(piece, piece, 300, PIECES)
  assert.equal(piece, CHUNK)
  for (let n = 0; n < 9; n += 1) piece = adapt(piece, piece, null, PIECES)
  assert.equal(piece, PIECES.least)
  assert.deepEqual([1500, 2000, 2001, 999].map((took) => adapt(FIRST, FIRST, took, PIECES)), [FIRST, FIRST, FIRST / 2, FIRST * 2])
  assert.equal(adapt(FIRST, FIRST - 1, 10, PIECES), FIRST, 'the end of a photo went quickly because it was short')
})

/** Photos through a link of so many kbit/s that breaks every 15 s of sending: what was sent of their bytes, over what they are. */
function sent(kbits, { photos = 40, roundTrip = 150, slice = 15_000, anew = false } = {}) {
  const speed = kbits / 8 // bytes a ms
  const sizes = new Map()
  let [now, cut, piece, bytes] = [0, slice, FIRST, 0]
  const broken = () => { now = cut + 750; cut = now + slice; piece = anew ? FIRST : adapt(piece, piece, null, PIECES) }
  for (let photo = 0; photo < photos; photo += 1) {
    for (let offset = 0, sure = true, tries = 0; offset < PHOTO;) {
      assert.ok((tries += 1) < 20_000, `${kbits} kbit/s never gets on`)
      const length = sure ? nextPiece(PHOTO, offset, piece).length : 0
      const [up, done] = [now + (AROUND + length) / speed + roundTrip / 2, now + (2 * AROUND + length) / speed + roundTrip]
      if (up > cut) { // a piece that did not come whole is not kept: its checksum cannot be looked at
        bytes += Math.max(0, Math.min(length, (cut - now) * speed - AROUND))
        sure = false
        broken()
        continue
      }
      bytes += length
      offset += length
      sizes.set(piece, (sizes.get(piece) ?? 0) + length)
      if (done > cut) { sure = false; broken() } else { if (sure) piece = adapt(piece, length, done - now, PIECES); now = done; sure = true }
    }
  }
  const most = [...sizes].sort((a, b) => b[1] - a[1])[0][0]
  return { share: bytes / (photos * PHOTO), most: most / 1024, hours: now / 3_600_000 }
}

test('three hundred photos of 4 MB at 1 Mbit/s, cut every 15 s: a tenth at most goes twice', (t) => {
  const { share, most, hours } = sent(1000, { photos: 300 })
  t.diagnostic(`sent ${share.toFixed(4)} times, mostly in pieces of ${most} KiB, in ${hours.toFixed(1)} h`)
  assert.ok(share > 1 && share <= 1.1, share)
  assert.equal(most, 128)
})

test('at any speed, by page or by signal, with short and long ways to the server, little goes twice', (t) => {
  const shares = []
  for (const anew of [false, true]) {
    for (const roundTrip of [20, 150, 600]) {
      for (let kbits = 64; kbits < 20_000; kbits *= 1.3) shares.push(sent(kbits, { photos: 8, roundTrip, anew }).share)
    }
  }
  const [mean, worst] = [shares.reduce((sum, one) => sum + one, 0) / shares.length, Math.max(...shares)]
  t.diagnostic(`${shares.length} links: sent ${mean.toFixed(3)} times on average, ${worst.toFixed(3)} at worst`)
  assert.ok(mean <= 1.05, mean)
  // Where every cut meets the end of a piece, each costs the two seconds that a piece may take.
  assert.ok(worst <= 17 / 15, worst)
})

test('a thousand times fifteen seconds at 100 kbit/s: the upload moves in each, a tenth at most goes twice', () => {
  for (const anew of [false, true]) assert.ok(sent(100, { photos: 45, anew }).share <= 1.1)
})

test('even 16 kbit/s for fifteen seconds at a time gets on', () => {
  for (const anew of [false, true]) assert.ok(sent(16, { photos: 2, anew }).share < 2)
})
