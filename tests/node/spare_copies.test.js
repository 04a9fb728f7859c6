// A store of responses that does not answer is left alone for a minute, and not for the life of the page.

import assert from 'node:assert/strict'
import { mock, test } from 'node:test'
import { keepCopy, mayCopy } from '../../static/spare/copies.js'

const entry = (/** @type {string} */ name) => ({ what: /** @type {const} */ ('entry'), person: 'p', name })

test('a copy that does not come to an end costs the others a minute', async () => {
  let now = 0
  mock.method(performance, 'now', () => now)
  mock.timers.enable({ apis: ['setTimeout'] })
  /** @type {string[]} */
  const kept = []
  let silent = true
  globalThis.caches = /** @type {any} */ ({ open: async () => ({ put: (/** @type {string} */ url) => (silent ? new Promise(() => {}) : Promise.resolve(kept.push(url))) }) })
  const first = keepCopy('store', entry('one'), new Uint8Array(1))
  for (let turns = 0; turns < 20; turns += 1) await Promise.resolve()
  mock.timers.tick(5000)
  assert.equal(await first, false)
  silent = false
  now = 59_000
  assert.equal(await mayCopy('entry'), false)
  assert.equal(await keepCopy('store', entry('two'), new Uint8Array(1)), false)
  now = 61_000
  assert.equal(await keepCopy('store', entry('three'), new Uint8Array(1)), true)
  assert.deepEqual(kept, ['/spare/store/entry/p/three'])
})

test('where a photo finds no room no other is tried by this page, and records are', async () => {
  Object.defineProperty(globalThis, 'navigator', { value: { storage: { persisted: async () => true } }, configurable: true })
  let tried = 0
  globalThis.caches = /** @type {any} */ ({ open: async () => ({ put: async (/** @type {string} */ url) => {
    tried += 1
    if (url.includes('photo')) throw new DOMException('made to fail', 'QuotaExceededError')
  } }) })
  const photo = { what: /** @type {const} */ ('photo'), person: 'p', name: 'n' }
  assert.deepEqual([await keepCopy('s', photo, new Uint8Array(1)), await keepCopy('s', photo, new Uint8Array(1)), tried], [false, false, 1])
  assert.equal(await keepCopy('s', entry('e'), new Uint8Array(1)), true)
})
