import assert from 'node:assert/strict'
import { test } from 'node:test'

import { decode, encode } from '../../static/entry/base64url.js'
import { makeKey } from '../../static/entry/key.js'
import { isLow, lowered } from '../../static/entry/low.js'
import { parseEntry, parseJws, verifyJws } from '../../static/entry/parse.js'
import { makeProof } from '../../static/entry/proof.js'
import { signEntry } from '../../static/entry/sign.js'
import { codeOf, entries, statements } from './known.js'

const key = await makeKey()

test('the private half of a made key cannot be read', async () => {
  assert.equal(key.privateKey.extractable, false)
  await assert.rejects(crypto.subtle.exportKey('jwk', key.privateKey))
  await assert.rejects(crypto.subtle.exportKey('pkcs8', key.privateKey))
  assert.deepEqual(Object.keys(key.jwk).sort(), ['crv', 'kty', 'x', 'y'])
})

test('forty signatures of one payload: one digest, low s in all, each verifies', async () => {
  const payload = { v: 1, note: 'same' }
  const made = await Promise.all(Array.from({ length: 40 }, () => signEntry(payload, key)))
  assert.equal(new Set(made.map((it) => it.digest)).size, 1)
  assert.ok(new Set(made.map((it) => it.token)).size > 1, 'signing is random, so nothing may be named by signatures')
  for (const { token, digest } of made) {
    const entry = await parseEntry(token)
    await verifyJws(entry, key.jwk)
    assert.equal(entry.digest, digest)
    assert.deepEqual(entry.payload, payload)
  }
})

test('s is lowered and only s', () => {
  const high = decode(statementSignature(), 'signature')
  const order = 0xffffffff00000000ffffffffffffffffbce6faada7179e84f3b9cac2fc632551n
  const s = BigInt(`0x${Buffer.from(high.subarray(32)).toString('hex')}`)
  const twin = new Uint8Array([...high.subarray(0, 32), ...Buffer.from((order - s).toString(16).padStart(64, '0'), 'hex')])
  assert.equal(isLow(high), true)
  assert.equal(isLow(twin), false)
  assert.deepEqual(lowered(twin), high)
  assert.equal(lowered(high), high)
})

function statementSignature() {
  return statements.statements[0].token.split('.')[2]
}

test('every good payload of the vectors is signed again to the same content', async () => {
  for (const { name, token } of entries.good) {
    if (name === 'exactly 64 KiB') continue // its room is measured to the byte
    const { payload } = await parseEntry(token)
    const made = await parseEntry((await signEntry(payload, key)).token)
    assert.deepEqual(made.payload, payload, name)
  }
})

test('what JSON cannot carry alike is refused before signing, with its path', async () => {
  const deep = (/** @type {number} */ levels) => {
    /** @type {any} */
    let value = 1
    for (let level = 0; level < levels; level += 1) value = [value]
    return value
  }
  for (const [value, code] of /** @type {[any, string][]} */ ([
    [0.5, 'bad_number'], [NaN, 'bad_number'], [Infinity, 'bad_number'], [-0, 'bad_number'],
    [2 ** 53, 'bad_number'], [-(2 ** 53), 'bad_number'], [10n, 'bad_field'],
    ['\0', 'bad_text'], ['\ud83d', 'bad_text'], ['\ude00\ud83d', 'bad_text'], [{ '\udc00': 1 }, 'bad_text'],
    [new Date(0), 'bad_field'], [new Map(), 'bad_field'], [new Uint8Array(2), 'bad_field'], [() => 1, 'bad_field'],
    [[1, , 3], 'bad_field'], [[undefined], 'bad_field'], [{ toJSON: () => 1 }, 'bad_field'],
    [deep(32), 'too_deep'], ['a'.repeat(50000), 'too_large'],
    [1, 'taken'], [2 ** 53 - 1, 'taken'], ['🏠', 'taken'], [deep(31), 'taken'], [undefined, 'taken'], [null, 'taken'],
  ])) {
    assert.equal(await codeOf(() => signEntry({ x: value }, key)), code, String(code))
  }
  await assert.rejects(signEntry({ body: { gaps: [1, { value: 0.5 }] } }, key), { field: 'payload.body.gaps[1].value' })
})

test('a proof names its purpose and is no entry', async () => {
  const token = await makeProof('nonce', 'deliver', key)
  const proof = await parseJws(token, 'seamwalk-proof')
  await verifyJws(proof, key.jwk)
  assert.deepEqual(proof.payload, { nonce: 'nonce', purpose: 'deliver' })
  assert.equal(await codeOf(() => parseEntry(token)), 'wrong_type')
})

test('base64url round-trips every length and refuses every other spelling', async () => {
  for (let length = 0; length < 70; length += 1) {
    const bytes = crypto.getRandomValues(new Uint8Array(length))
    assert.equal(encode(bytes), Buffer.from(bytes).toString('base64url'))
    assert.deepEqual(decode(encode(bytes), 'x'), bytes)
  }
  for (const text of ['AA==', 'A', 'AB', 'A A', 'A+', 'AA\n', 'é']) {
    assert.equal(await codeOf(() => decode(text, 'x')), 'not_canonical', text)
  }
})
