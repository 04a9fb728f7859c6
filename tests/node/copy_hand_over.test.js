// A saved copy given to the phone's own way of sharing, where it takes such a file.

import assert from 'node:assert/strict'
import { test } from 'node:test'
import { canShare, share } from '../../static/copy/hand_over.js'

const FILE = new File(['x'], 'seamwalk-copy.tar')

/** A phone that shares in this way. @param {any} phone */
function on(phone) {
  Object.defineProperty(globalThis, 'navigator', { value: phone, configurable: true })
}

test('sharing is offered only where the phone says that it takes this very file', () => {
  const yes = { share: () => {}, canShare: (/** @type {any} */ { files }) => files[0] === FILE }
  for (const [phone, expected] of /** @type {[any, boolean][]} */ ([[{}, false], [{ share: () => {} }, false],
    [{ ...yes, canShare: () => false }, false], [yes, true]])) {
    on(phone)
    assert.equal(canShare(FILE), expected)
  }
})

test('who thinks better of it is told nothing, and what stands in the way has its words and a way out', async () => {
  /** @param {() => any} end */
  const ends = (end) => on({ share: async (/** @type {any} */ { files }) => { assert.equal(files[0], FILE); return end() } })
  ends(() => {})
  assert.equal(await share(FILE), true)
  ends(() => { throw new DOMException('', 'AbortError') })
  assert.equal(await share(FILE), false)
  for (const name of ['NotAllowedError', 'DataError']) {
    ends(() => { throw new DOMException('no', name) })
    await assert.rejects(share(FILE), { code: 'copy.not_shared' })
  }
})
