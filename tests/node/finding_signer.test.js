import assert from 'node:assert/strict'
import test from 'node:test'

import { signer } from '../../static/finding/signer.js'

test('whoever signs under another name is shown under their own', () => {
  const names = { fay: 'Fay (invented)' }
  assert.equal(signer(names, { by: 'fay', name: 'The engineer' }), 'Fay (invented)')
  assert.equal(signer(names, { by: 'unknown', name: 'Somebody' }), 'Somebody')
  assert.equal(signer(names, undefined), '')
})
