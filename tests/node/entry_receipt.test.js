import assert from 'node:assert/strict'
import { test } from 'node:test'

import { makeKey } from '../../static/entry/key.js'
import { verifyReceipt } from '../../static/entry/receipt.js'
import { signJws } from '../../static/entry/sign.js'
import { codeOf, statements } from './known.js'

const [enrolment, entryReceipt, photoReceipt] = statements.statements.map((/** @type {any} */ row) => row.token)
const job = JSON.parse(Buffer.from(entryReceipt.split('.')[1], 'base64url').toString()).job
const entry = Buffer.from(Uint8Array.from({ length: 32 }, (_, index) => index)).toString('base64url')
const photo = '0f'.repeat(32)

test('the server\'s receipt for an entry is verified against its pinned key', async () => {
  const receipt = await verifyReceipt(entryReceipt, statements.server, { job, entry })
  assert.deepEqual([receipt.seq, receipt.n, receipt.prev], [2, 0, null])
  assert.equal(receipt.digest, statements.statements[1].digest)
})

test('the server\'s receipt for a photo names its size and the receipt before it', async () => {
  const receipt = await verifyReceipt(photoReceipt, statements.server, { job, photo, size: 4096 })
  assert.deepEqual([receipt.seq, receipt.n, receipt.prev], [5, 1, statements.statements[1].digest])
})

test('a receipt for anything else is no receipt', async () => {
  const other = entry.replace('A', 'B')
  for (const [token, expected] of /** @type {[string, any][]} */ ([
    [entryReceipt, { job, entry: other }],
    [entryReceipt, { job: job.replace('0', '1'), entry }],
    [photoReceipt, { job, entry }],
    [entryReceipt, { job, photo, size: 4096 }],
    [photoReceipt, { job, photo, size: 4095 }],
  ])) {
    assert.equal(await codeOf(() => verifyReceipt(token, statements.server, expected)), 'bad_field')
  }
  assert.equal(await codeOf(() => verifyReceipt(enrolment, statements.server, { job, entry })), 'unknown_kind')
})

test('another server, a portal\'s page and nothing at all are refused as values', async () => {
  const stranger = await makeKey()
  const payload = { v: 1, kind: 'receipt', seq: 2, at: '', job, n: 0, prev: null, entry }
  const forged = (await signJws(payload, 'seamwalk-statement', stranger)).token
  const named = (await signJws(payload, 'seamwalk-statement', { ...stranger, kid: statements.kid })).token
  const expected = { job, entry }
  assert.equal(await codeOf(() => verifyReceipt(forged, statements.server, expected)), 'unknown_key')
  assert.equal(await codeOf(() => verifyReceipt(named, statements.server, expected)), 'bad_signature')
  for (const junk of ['<html>', '', undefined, null, {}, 7]) {
    assert.equal(await codeOf(() => verifyReceipt(junk, statements.server, expected)), 'malformed')
  }
  assert.equal((await verifyReceipt(forged, stranger.jwk, expected)).entry, entry)
})

test('every changed letter of a receipt is refused', async () => {
  for (let place = 0; place < entryReceipt.length; place += 1) {
    const letter = entryReceipt[place] === 'A' ? 'B' : 'A'
    const changed = entryReceipt.slice(0, place) + letter + entryReceipt.slice(place + 1)
    const code = await codeOf(() => verifyReceipt(changed, statements.server, { job, entry }))
    assert.notEqual(code, 'taken', String(place))
  }
})
