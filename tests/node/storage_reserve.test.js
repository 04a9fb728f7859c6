// Nothing is opened or written without room for the browser to put its own store in order. What becomes of a real store
// on a disk without it, tests/browser/test_full_disk.py shows.

import 'fake-indexeddb/auto'
import assert from 'node:assert/strict'
import { beforeEach, test } from 'node:test'
import { disk, emptied, responses } from './held_responses.js'

const CHROMIUM = 'Mozilla/5.0 (Linux; Android 10) Chrome/130.0.0.0 Mobile', MIB = 1024 * 1024
const browser = { userAgent: CHROMIUM }
Object.defineProperty(globalThis, 'navigator', { value: browser, configurable: true })
Object.assign(globalThis, { caches: responses, window: globalThis, addEventListener() {}, dispatchEvent() {} })

let opened = 0
const open = indexedDB.open.bind(indexedDB)
indexedDB.open = (...args) => {
  opened += 1
  return open(...args)
}

const FULL = { code: 'outbox.disk_full', name: 'QuotaExceededError' }
const { holdRoom, giveRoom } = await import('../../static/storage/held_room.js')
const { dropConnection } = await import('../../static/storage/connection.js')
const { withDb } = await import('../../static/storage/database.js')
const put = (/** @type {number} */ value, options = {}) => withDb(['meta'], 'readwrite', (tx) => tx.store.put(value, ['n']), options)
const read = () => withDb(['meta'], 'readonly', (tx) => tx.store.get(['n']))

beforeEach(() => {
  emptied()
  opened = 0
  browser.userAgent = CHROMIUM
  dropConnection()
})

test('before the first opening room is looked for, once', async () => {
  await put(1)
  await Promise.all([read(), put(2), read()])
  assert.deepEqual([await read(), disk.tried, opened], [2, 1, 1])
})

test('without the ballast each write looks for room first, and where there is none nothing is written', async () => {
  await giveRoom()
  await put(3)
  disk.room = 11 * MIB
  for (let n = 0; n < 3; n += 1) await assert.rejects(put(4), FULL)
  assert.equal(await read(), 3, 'what is open is read')
  await put(5, { need: 4 * MIB })
  await put(6, { need: 0 })
  assert.equal(await read(), 6)
})

test('where there is no room nothing is opened either, and with room it goes on', async () => {
  await giveRoom()
  disk.room = 5 * MIB
  await assert.rejects(read(), FULL)
  await assert.rejects(put(7), FULL)
  assert.equal(opened, 0)
  disk.room = 50 * MIB
  await put(8)
  assert.deepEqual([await read(), opened], [8, 1])
})

test('the ballast gives its room where there is no other', async () => {
  await holdRoom(32 * MIB)
  await giveRoom()
  await holdRoom(32 * MIB)
  disk.room = 33 * MIB
  dropConnection()
  await put(9)
  assert.deepEqual([disk.size, await read()], [0, 9])
})

test('writes that are not sure of their room go one after the other', async () => {
  await giveRoom()
  disk.room = 13 * MIB
  await Promise.all([1, 2, 3, 4].map((n) => put(n)))
  assert.equal(await read(), 4, 'two looks at once would each have met a full disk')
})

test('once the ballast is held again, room is looked for once more, and then no more', async () => {
  await giveRoom()
  await holdRoom(MIB)
  await put(10)
  const before = disk.tried
  await put(11)
  assert.equal(disk.tried, before)
})

test('a browser without such a store goes on as it is', async () => {
  await giveRoom()
  globalThis.caches = /** @type {any} */ (undefined)
  await put(12)
  assert.equal(await read(), 12)
  globalThis.caches = /** @type {any} */ (responses)
})
