import assert from 'node:assert/strict'
import { test } from 'node:test'

import { makeKey } from '../../static/entry/key.js'
import { verifyRestoration } from '../../static/entry/restoration.js'
import { signJws } from '../../static/entry/sign.js'
import { codeOf, statements } from './known.js'

const [first] = statements.statements
const { token, digest } = statements.statements[5]

test('the server\'s word that it was set back says which numbers the lost time may have given', async () => {
  const said = await verifyRestoration(token, statements.server)
  assert.deepEqual([said.last, said.seq, said.digest], [7, 1795642805120, digest])
})

test('nobody but the pinned server can say so, and nothing else means it', async () => {
  const stranger = await makeKey()
  const payload = { v: 1, kind: 'restoration', seq: 9, at: '', last: 7, head: null }
  const sign = async (/** @type {any} */ said) => (await signJws(said, 'seamwalk-statement', stranger)).token
  assert.equal(await codeOf(async () => verifyRestoration(await sign(payload), statements.server)), 'unknown_key')
  assert.equal(await codeOf(() => verifyRestoration(first.token, statements.server)), 'unknown_kind')
  for (const junk of ['<html>', '', null, undefined, {}]) assert.equal(await codeOf(() => verifyRestoration(junk, statements.server)), 'malformed')
  for (const wrong of [{ last: 9 }, { last: -1 }, { last: '7' }, { seq: 7 }]) {
    assert.equal(await codeOf(async () => verifyRestoration(await sign({ ...payload, ...wrong }), stranger.jwk)), 'bad_field')
  }
})
