import assert from 'node:assert/strict'
import { test } from 'node:test'

import { importPublic, thumbprint } from '../../static/entry/key.js'
import { parseEntry, verifyJws } from '../../static/entry/parse.js'
import { codeOf, entries } from './known.js'

test('every good entry is read, verified and named as Python names it', async () => {
  assert.ok(entries.good.length > 15)
  for (const { name, token, digest } of entries.good) {
    const entry = await parseEntry(token)
    await verifyJws(entry, entries.jwk)
    assert.equal(entry.digest, digest, name)
    assert.equal(entry.token, token, name)
  }
})

test('every token of bad form is refused with the code Python gives', async () => {
  assert.ok(entries.bad_tokens.length > 60)
  for (const { name, token, code } of entries.bad_tokens) {
    const given = await codeOf(async () => verifyJws(await parseEntry(token), entries.jwk))
    assert.equal(given, code, name)
  }
})

test('entries with a bad payload are well signed: their content is the office\'s to judge', async () => {
  for (const { name, token } of entries.bad_payloads) {
    const given = await codeOf(async () => verifyJws(await parseEntry(token), entries.jwk))
    assert.equal(given, 'taken', name)
  }
})

test('no changed bit of a signature and no cut is taken', async () => {
  const { token } = entries.good.find((/** @type {any} */ row) => row.name === 'station')
  for (let place = 0; place < token.length; place += 1) {
    const letter = token[place] === 'A' ? 'B' : 'A'
    const changed = token.slice(0, place) + letter + token.slice(place + 1)
    assert.notEqual(await codeOf(async () => verifyJws(await parseEntry(changed), entries.jwk)), 'taken')
    assert.notEqual(await codeOf(async () => verifyJws(await parseEntry(token.slice(0, place)), entries.jwk)), 'taken')
  }
})

test('the thumbprint of the vectors\' key is its kid', async () => {
  assert.equal(await thumbprint(entries.jwk), entries.kid)
  assert.equal(await thumbprint(/** @type {any} */ ({ ...entries.jwk, ext: true, key_ops: [] })), entries.kid)
})

test('a key that is not a public P-256 key is refused', async () => {
  for (const change of [{ x: 'AA' }, { y: entries.jwk.x }, { crv: 'P-384' }, { kty: 'RSA' }, { x: undefined }]) {
    assert.equal(await codeOf(() => importPublic({ ...entries.jwk, ...change })), 'bad_key', JSON.stringify(change))
  }
})
