// The ballast's file, which windows share: what is asked of it comes to pass, or is said not to have.

import 'fake-indexeddb/auto'
import assert from 'node:assert/strict'
import { beforeEach, test } from 'node:test'
import { FileWorker, disk, emptied, storage } from './held_file.js'

Object.defineProperty(globalThis, 'navigator', { value: { userAgent: 'a phone', storage }, configurable: true })
Object.assign(globalThis, { Worker: FileWorker, window: globalThis, addEventListener() {}, dispatchEvent() {} })
const real = globalThis.setTimeout // the worker's waits pass at once
globalThis.setTimeout = /** @type {any} */ ((/** @type {any} */ work, /** @type {number} */ ms) => real(work, ms === 100 ? 1 : ms))

const { dropBallast, layBallast } = await import('../../static/storage/ballast.js')
const { giveRoom, holdRoom } = await import('../../static/storage/held_room.js')
const { withDb } = await import('../../static/storage/database.js')

const MIB = 1024 * 1024
const bricks = () => withDb(['ballast'], 'readonly', (tx) => tx.store.count())
beforeEach(async () => {
  emptied()
  globalThis.Worker = /** @type {any} */ (FileWorker)
  await withDb(['ballast'], 'readwrite', (tx) => tx.store.clear())
})

test('the ballast lies in the file alone, and all of it is given back', async () => {
  await withDb(['ballast'], 'readwrite', (tx) => tx.store.put(new ArrayBuffer(8), 0)) // of an older build
  assert.equal(await layBallast(), true)
  assert.deepEqual([disk.size, await bricks()], [32 * MIB, 0])
  await dropBallast()
  assert.deepEqual([disk.size, disk.open], [0, false])
})

test('on a disk with too little room half of what there was is left to others', async () => {
  disk.room = 10 * MIB
  assert.equal(await layBallast(), false)
  assert.deepEqual([disk.size, await bricks()], [5 * MIB, 0])
})

test('where a full disk takes no file at all, nothing is laid in the database in its place', async () => {
  disk.files = false
  assert.equal(await layBallast(), false)
  assert.equal(await bricks(), 0)
})

test('while another window has the file, its ballast is not laid a second time in the database', async () => {
  disk.open = true
  assert.equal(await layBallast(), false)
  assert.equal(await bricks(), 0)
})

test('room that another window is just taking is given back once it has the file no more', async () => {
  Object.assign(disk, { open: true, size: 32 * MIB })
  real(() => { disk.open = false }, 20)
  assert.equal(await giveRoom(), 'done')
  assert.equal(disk.size, 0)
})

test('room that this window is just taking is given back at once, and is not taken behind it', async () => {
  disk.open = true
  const taking = holdRoom(32 * MIB)
  await new Promise((resolve) => real(resolve, 5))
  const giving = giveRoom()
  assert.equal(await taking, 'full')
  assert.equal(disk.ended, 1, 'its worker ended')
  const next = holdRoom(MIB)
  disk.open = false
  assert.equal(await giving, 'done')
  assert.equal(await next, 'done', 'what comes after it is laid after it')
  assert.equal(disk.size, MIB)
})

test('room asked for and given back in one breath is given back', async () => {
  const both = [holdRoom(MIB), giveRoom()]
  assert.deepEqual(await Promise.all(both), ['full', 'done'])
  assert.equal(disk.size, 0)
})

test('browsers of before 2023, whose files promise their sizes, hold room too', async () => {
  disk.promises = true
  assert.equal(await layBallast(1), true)
  assert.equal(disk.size, MIB)
  await dropBallast()
  assert.equal(disk.size, 0)
})

test('where no worker may start, the room lies in the database, and a write that fails is told as itself', async () => {
  globalThis.Worker = /** @type {any} */ (class { constructor() { throw new DOMException('refused', 'SecurityError') } })
  assert.equal(await layBallast(2), true)
  assert.equal(await bricks(), 2)
  const put = IDBObjectStore.prototype.put
  IDBObjectStore.prototype.put = () => { throw new DOMException('full', 'QuotaExceededError') }
  await assert.rejects(withDb(['meta'], 'readwrite', (tx) => tx.store.put(1, ['n'])), { code: 'outbox.disk_full' })
  IDBObjectStore.prototype.put = put
})

test('a write waits while more room is taken, which fills a disk to the brim for a moment', async () => {
  disk.open = true
  const taking = holdRoom(MIB)
  let written = false
  const write = withDb(['ballast'], 'readwrite', (tx) => tx.store.count()).then(() => { written = true })
  await new Promise((resolve) => real(resolve, 15))
  assert.equal(written, false)
  disk.open = false
  assert.equal(await taking, 'done')
  await write
})
