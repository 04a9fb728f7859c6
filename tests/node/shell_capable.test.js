// What a cold start on a full disk says: nothing against a phone that holds work, and the truth to a new one.

import 'fake-indexeddb/auto'
import assert from 'node:assert/strict'
import { test } from 'node:test'

const target = new EventTarget()
Object.assign(globalThis, { window: globalThis, isSecureContext: true, addEventListener: target.addEventListener.bind(target),
  dispatchEvent: target.dispatchEvent.bind(target) })
const later = globalThis.setTimeout
globalThis.setTimeout = /** @type {any} */ ((/** @type {any} */ work, /** @type {number} */ ms) => later(work, ms === 2000 ? 400 : ms))

const { changePerson } = await import('../../static/people/current.js')
const put = IDBObjectStore.prototype.put
const disk = (/** @type {string[]} */ full) => {
  IDBObjectStore.prototype.put = function (...args) {
    if (full.includes(this.name)) throw new DOMException('full', 'QuotaExceededError')
    return put.apply(this, args)
  }
}
/** A page opened cold. @param {string} page */
const cold = async (page) => (await import(`../../static/shell/capable.js?${page}`)).capable()

test('a new phone without room is told so, and goes on by itself once there is some', async () => {
  disk(['photo_chunks'])
  const able = new Promise((done) => addEventListener('seamwalk:able', (event) => /** @type {any} */ (event).detail.ok && done(/** @type {any} */ (event).detail)))
  assert.deepEqual(await cold('new'), { ok: false, reason: 'shell.not_capable.full' })
  disk([])
  assert.deepEqual(await able, { ok: true, reason: null })
})

test('a phone that holds somebody\'s work opens on a full disk: what is unsent must be seen, copied and sent', async () => {
  await changePerson('01a00000-0000-7000-8000-000000000002', { name: 'Ann (invented)' })
  for (const store of ['photo_chunks', 'keys']) {
    disk([store])
    assert.deepEqual(await cold(store), { ok: true, reason: null }, store)
  }
  IDBObjectStore.prototype.put = () => { throw new DOMException('gone', 'SecurityError') }
  assert.equal((await cold('gone')).ok, false)
  disk([])
})
