// Room that is held beside the database: what is asked of it comes to pass, or is said not to have.

import 'fake-indexeddb/auto'
import assert from 'node:assert/strict'
import { beforeEach, test } from 'node:test'
import { disk, emptied, responses } from './held_responses.js'

Object.defineProperty(globalThis, 'navigator', { value: { userAgent: 'a phone' }, configurable: true })
Object.assign(globalThis, { window: globalThis, addEventListener() {}, dispatchEvent() {} })
const settle = () => new Promise((resolve) => setTimeout(resolve, 15))

const { dropBallast, layBallast } = await import('../../static/storage/ballast.js')
const { giveRoom, holdRoom, tryRoom } = await import('../../static/storage/held_room.js')
const { withDb } = await import('../../static/storage/database.js')

const MIB = 1024 * 1024
const bricks = () => withDb(['ballast'], 'readonly', (tx) => tx.store.count())
beforeEach(async () => {
  await giveRoom()
  emptied()
  globalThis.caches = /** @type {any} */ (responses)
  await withDb(['ballast'], 'readwrite', (tx) => tx.store.clear())
})

test('the ballast lies beside the database alone, and all of it is given back', async () => {
  await withDb(['ballast'], 'readwrite', (tx) => tx.store.put(new ArrayBuffer(8), 0)) // of an older build
  assert.equal(await layBallast(), true)
  assert.deepEqual([disk.size, await bricks()], [32 * MIB, 0])
  await dropBallast()
  assert.equal(disk.size, 0)
})

test('what is held already is not written again', async () => {
  await holdRoom(3 * MIB)
  disk.room = 3 * MIB // it takes no more
  assert.equal(await holdRoom(3 * MIB), 'done')
})

test('on a disk with too little room half of what there was is left to others', async () => {
  disk.room = 10 * MIB
  assert.equal(await layBallast(), false)
  assert.deepEqual([disk.size, await bricks()], [5 * MIB, 0])
})

test('room that this window is just taking is given back at once, and is not taken behind it', async () => {
  disk.slow = 5
  const taking = holdRoom(32 * MIB)
  await settle()
  const giving = giveRoom()
  assert.equal(await taking, 'full')
  assert.equal(await giving, 'done')
  assert.equal(disk.size, 0)
  disk.slow = 0
  assert.equal(await holdRoom(MIB), 'done', 'what comes after it is laid after it')
  assert.equal(disk.size, MIB)
})

test('room asked for and given back in one breath is given back', async () => {
  const both = [holdRoom(MIB), giveRoom()]
  assert.deepEqual(await Promise.all(both), ['full', 'done'])
  assert.equal(disk.size, 0)
})

test('to look for room leaves none taken', async () => {
  disk.room = 5 * MIB
  assert.deepEqual([await tryRoom(4 * MIB), await tryRoom(6 * MIB), await tryRoom(5 * MIB)], ['done', 'full', 'done'])
})

test('where there is no such store the room lies in the database, and a write that fails is told as itself', async () => {
  globalThis.caches = /** @type {any} */ (undefined)
  assert.equal(await layBallast(2), true)
  assert.equal(await bricks(), 2)
  const put = IDBObjectStore.prototype.put
  IDBObjectStore.prototype.put = () => { throw new DOMException('full', 'QuotaExceededError') }
  await assert.rejects(withDb(['meta'], 'readwrite', (tx) => tx.store.put(1, ['n'])), { code: 'outbox.disk_full' })
  IDBObjectStore.prototype.put = put
})

test('a write waits while more room is taken, which fills a disk to the brim for a moment', async () => {
  disk.slow = 30
  const taking = holdRoom(MIB)
  let written = false
  const write = withDb(['ballast'], 'readwrite', (tx) => tx.store.count()).then(() => { written = true })
  await settle()
  assert.equal(written, false)
  assert.equal(await taking, 'done')
  await write
})

test('what a page left that was ended while it looked for room is given back by the next, and nobody else\'s look is', async () => {
  const { tryRoom: next } = await import('../../static/storage/held_room.js?another-page')
  for (const name of [`seamwalk-room-tried-${Date.now() - 120_000}-0.5`, `seamwalk-room-tried-0.25`, `seamwalk-room-tried-${Date.now()}-0.5`]) {
    await (await responses.open(name)).put('/room/0', new Response(new Uint8Array(8)))
  }
  assert.equal(await next(MIB), 'done')
  const left = (await responses.keys()).filter((name) => name.startsWith('seamwalk-room-tried'))
  assert.equal(left.length, 1)
  assert.match(left[0], /-0\.5$/)
})
