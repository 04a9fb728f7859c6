// Entries and statements as Python signed them, read by Node's own cryptography (OpenSSL), which the phone does not use.

import { test } from 'node:test'
import assert from 'node:assert/strict'
import { createHash, createPublicKey, verify } from 'node:crypto'
import { entries, statements } from './known.js'

/** RFC 7515, 5.2 and RFC 7518, 3.4: r and s, 32 bytes each. @param {string} token @param {any} jwk */
function holds(token, jwk) {
  const [head, payload, signature] = token.split('.')
  const key = createPublicKey({ key: jwk, format: 'jwk' })
  return verify('sha256', Buffer.from(`${head}.${payload}`), { key, dsaEncoding: 'ieee-p1363' }, Buffer.from(signature, 'base64url'))
}

test('every entry and statement of the vectors verifies, and none that was changed', () => {
  for (const [rows, jwk] of [[entries.good, entries.jwk], [statements.statements, statements.server]]) {
    assert.ok(rows.length > 5)
    for (const { token } of rows) {
      assert.ok(holds(token, jwk))
      const [head, payload, signature] = token.split('.')
      assert.ok(!holds(`${head}.${payload}A.${signature}`, jwk))
    }
  }
})

test('the example of RFC 7515, appendix A.3, verifies, and its key has the thumbprint that RFC 7638 says how to compute', () => {
  const input = 'eyJhbGciOiJFUzI1NiJ9.eyJpc3MiOiJqb2UiLA0KICJleHAiOjEzMDA4MTkzODAsDQogImh0dHA6Ly9leGFtcGxlLmNvbS9pc19yb290Ijp0cnVlfQ'
  const signature = 'DtEhU3ljbEg8L38VWAfUAqOyKAM6-Xx-F4GawxaepmXFCgfTjDxw5djxLa8ISlSApmWQxfKTUJqPP3-Kg6NU1Q'
  assert.deepEqual([entries.jwk.x, entries.jwk.y], ['f83OJ3D2xF1Bg8vub9tLe1gHMzV76e8Tus9uPHvRVEU', 'x_FEzRu9m36HLN_tue659LNpXW6pCyStikYjKIWI5a0'])
  assert.ok(holds(`${input}.${signature}`, entries.jwk))
  const { crv, kty, x, y } = entries.jwk
  assert.equal(createHash('sha256').update(JSON.stringify({ crv, kty, x, y })).digest('base64url'), entries.kid)
})

test('a thumbprint is the one that RFC 7638, section 3.1, prints', () => {
  const n = '0vx7agoebGcQSuuPiLJXZptN9nndrQmbXEps2aiAFbWhM78LhWx4cbbfAAtVT86zwu1RK7aPFFxuhDR1L6tSoc_BJECPebWKRXjBZCiFV4n3oknjhMstn64tZ_2W-5JsGY4Hc5n9yBXArwl93lqt7_RN5w6Cf0h4QyQ5v-65YGjQR0_FDW2QvzqY368QQMicAtaSqzs8KJZgnYb9c7d0zgdAZHzu6qMQvRL5hajrn1n91CbOpbISD08qNLyrdkt-bFTWhAI4vMQFh6WeZu0fM4lFd2NcRwr3XPksINHaQ-G_xBniIqbw0Ls1jF44-csFCur-kEgU8awapJzKnqDKgw'
  assert.equal(createHash('sha256').update(JSON.stringify({ e: 'AQAB', kty: 'RSA', n })).digest('base64url'), 'NzbLsXh8uDCcd-6MNwXF4W_7noWXFZAfHkxZsRGC9Xs')
})
