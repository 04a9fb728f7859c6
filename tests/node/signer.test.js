import assert from 'node:assert/strict'
import test from 'node:test'

import { signedAs, signer } from '../../static/frame/signer.js'

const PEOPLE = { fay: { name: 'Fay (invented)', role: 'foreman' } }

test('whoever signs under another name is shown under their own', () => {
  assert.equal(signer(PEOPLE, { by: 'fay', name: 'The engineer' }), 'Fay (invented)')
  assert.equal(signer(PEOPLE, { by: 'unknown', name: 'Somebody' }), 'Somebody')
  assert.equal(signer(PEOPLE, undefined), '')
})

test('whoever signs in another role is shown in their own', () => {
  assert.equal(signedAs(PEOPLE, { by: 'fay', role: 'engineer' }), 'foreman')
  assert.equal(signedAs(PEOPLE, { by: 'unknown', role: 'owner' }), 'owner')
  assert.equal(signedAs(PEOPLE, undefined), '')
})
