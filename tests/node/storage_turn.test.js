// The log of a store that may end in a torn record is turned over: what is done, in which order, and that it ends. The
// database is one in memory; what a real browser does with a torn log, tests/browser/test_torn.py shows.

import 'fake-indexeddb/auto'
import assert from 'node:assert/strict'
import { beforeEach, test } from 'node:test'
import { disk, emptied, responses } from './held_responses.js'

const CHROMIUM = 'Mozilla/5.0 (Linux; Android 10) Chrome/130.0.0.0 Mobile', MIB = 1024 * 1024
const browser = { userAgent: CHROMIUM }
Object.defineProperty(globalThis, 'navigator', { value: browser, configurable: true })

let target = new EventTarget()
/** @type {string[]} what was done, in order */
let told = []
/** @type {(() => void)[]} */
let planned = []
const real = globalThis.setTimeout
Object.assign(globalThis, {
  caches: responses, window: globalThis,
  addEventListener: (/** @type {string} */ name, /** @type {any} */ heard) => target.addEventListener(name, heard),
  dispatchEvent: (/** @type {Event} */ event) => target.dispatchEvent(event),
  setTimeout: (/** @type {any} */ work, /** @type {number} */ ms) => {
    const waiting = String(work).includes('[native code]'), laying = String(work).includes('layBallast')
    if (waiting && ms > 300) told.push(`wait ${ms}`)
    if (laying) told.push(`lay in ${ms}`) && planned.push(work)
    return waiting ? real(work, 0) : laying ? 0 : real(work, ms).unref() // limits that are not met
  },
})

const { withDb } = await import('../../static/storage/database.js')
const { isFull, noteFull } = await import('../../static/storage/room.js')
const { storageTrouble } = await import('../../static/storage/standing.js')
const { layBallast } = await import('../../static/storage/ballast.js')
const { Trouble } = await import('../../static/words/trouble.js')

let pages = 0
/** A page begins. */
async function page() {
  pages += 1
  const { startTurning } = await import(`../../static/storage/turn.js?${pages}`)
  startTurning()
}

const plain = { put: IDBObjectStore.prototype.put, delete: IDBObjectStore.prototype.delete }
/** @type {(store: IDBObjectStore, key: any) => void} */
let writing = () => {}
let written = 0, ofOne = 0, most = 0
IDBObjectStore.prototype.put = function (value, key) {
  if (this.name === 'ballast') {
    if (key === -1) told.push('turn')
    written += value.byteLength
    most = Math.max(most, ofOne += value.byteLength)
  }
  if (JSON.stringify(key) === '["full"]') told.push(`full ${value}`)
  writing(this, key)
  return plain.put.call(this, value, key)
}
IDBObjectStore.prototype.delete = function (range) {
  if (this.name === 'ballast' && /** @type {IDBKeyRange} */ (range).upper === -1) told.push('away')
  return plain.delete.call(this, range)
}

let open = 0
const begin = IDBDatabase.prototype.transaction
IDBDatabase.prototype.transaction = function (...args) {
  const tx = begin.apply(this, args)
  open += 1
  ofOne = 0
  for (const name of ['complete', 'abort']) tx.addEventListener(name, () => { open -= 1 })
  return tx
}

/** Nothing more comes. */
async function quiet() {
  for (let before = -1, still = 0; still < 5; still = !open && before === told.length ? still + 1 : 0) {
    before = told.length
    await new Promise((resolve) => real(resolve, 10))
  }
}

const torn = () => globalThis.dispatchEvent(new Event('seamwalk:torn'))
const failing = (/** @type {string} */ name) => { throw new DOMException('made to fail', name) }

beforeEach(async () => {
  emptied()
  writing = () => {}
  target = new EventTarget()
  browser.userAgent = CHROMIUM
  await noteFull(false)
  await layBallast()
  target.addEventListener('seamwalk:storage', () => told.push(`notice ${storageTrouble()}`))
  disk.given = () => told.at(-1) !== 'room' && told.push('room')
  told = []
  planned = []
  written = most = 0
})

test('at a start more is written than a log holds, and is taken away; the ballast stays', async () => {
  await page()
  await quiet()
  assert.deepEqual(told, ['turn', 'away'])
  assert.ok(most <= 0.25 * MIB, `a write that comes meanwhile waits for ${most} bytes`)
  assert.ok(written > 4 * MIB, `${written}`)
  assert.equal(await withDb(['ballast'], 'readonly', (tx) => tx.store.count()), 0)
  assert.deepEqual([disk.size, await isFull()], [32 * MIB, false])
})

test('a browser that keeps no such log writes nothing', async () => {
  browser.userAgent = 'Mozilla/5.0 (Android 14; Mobile; rv:130.0) Gecko/130.0 Firefox/130.0'
  await page()
  torn()
  await quiet()
  assert.deepEqual(told, [])
})

test('after a write that failed the ballast goes first; the next photo looks for room, and the ballast comes again', async () => {
  await page()
  await quiet()
  torn()
  await quiet()
  assert.deepEqual(told, ['turn', 'away', 'room', 'turn', 'away', 'full true', 'lay in 20000'])
  planned[0]()
  await quiet()
  assert.equal(disk.size, 32 * MIB)
})

test('where the room is wanting the ballast gives it, and nobody is told', async () => {
  writing = (store, key) => { if (store.name === 'ballast' && key < 0 && disk.size) failing('QuotaExceededError') }
  await page()
  await quiet()
  assert.deepEqual(told.slice(0, 4), ['turn', 'room', 'turn', 'away'])
  assert.equal(told.filter((one) => one.startsWith('notice')).length, 0)
})

test('a disk that takes nothing is asked ever more rarely, the screen says so until it takes it, and then it ends', async () => {
  let left = 9
  writing = (store, key) => { if (key === -1 && (left -= 1) >= 0) failing('QuotaExceededError') }
  await page()
  await quiet()
  const [wait, turns] = [told.filter((one) => one.startsWith('wait')), told.filter((one) => one === 'turn').length]
  assert.deepEqual(wait, [1000, 2000, 5000, 15_000, 60_000, 60_000, 60_000, 60_000].map((ms) => `wait ${ms}`))
  assert.equal(turns, 10)
  assert.deepEqual(told.slice(0, 6), ['turn', 'room', 'turn', 'room', 'notice storage.torn', 'wait 1000'])
  assert.deepEqual(told.slice(-5), ['turn', 'away', 'notice null', 'full true', 'lay in 20000'])
})

test('a write that fails while the log is turned has it turned once more, and no more than that', async () => {
  let left = 1
  writing = (store, key) => { if (key === -100 && (left -= 1) >= 0) torn() }
  await page()
  await quiet()
  assert.equal(told.filter((one) => one === 'away').length, 2)
})

test('a write that fails after the last turn, while that is being noted, has it turned too', async () => {
  await page()
  await quiet()
  told = []
  let left = 1
  writing = (store, key) => { if (JSON.stringify(key) === '["full"]' && (left -= 1) >= 0) torn() }
  torn()
  await quiet()
  assert.equal(told.filter((one) => one === 'away').length, 2, told.join(', '))
})

test('a store that another window holds is no full disk: the ballast stays, and it is turned once it lets go', async () => {
  let left = 4
  writing = (store, key) => { if (key === -1 && (left -= 1) >= 0) throw new Trouble('storage.held') }
  await page()
  await quiet()
  assert.deepEqual([disk.size, await isFull()], [32 * MIB, false])
  assert.deepEqual(told.filter((one) => !one.startsWith('wait')), ['turn', 'turn', 'turn', 'turn', 'turn', 'away'])
})

test('twenty writes that fail one after the other are each met at once: a store opened twice over torn ends is gone', async () => {
  await page()
  for (let n = 0; n < 19; n += 1) {
    await quiet()
    torn()
  }
  await quiet()
  assert.equal(told.filter((one) => one === 'away').length, 20)
  assert.ok(!told.some((one) => one.startsWith('wait') || one.startsWith('notice')), told.join(', '))
})

test('a storage in which each turn fails somewhere and then goes through is not filled without a break, and that is said', async () => {
  let turns = 30
  writing = (store, key) => { if (key === -2 && (turns -= 1) >= 0) torn() }
  await page()
  await quiet()
  assert.deepEqual([told.filter((one) => one === 'away').length, told.filter((one) => one === 'wait 60000').length], [31, 11])
  assert.deepEqual(told.filter((one) => one.startsWith('notice')), ['notice storage.torn', 'notice null'])
})

test('where laying the ballast is what fails, it is laid ever more rarely', async () => {
  await page()
  await quiet()
  for (let n = 0; n < 8; n += 1) {
    torn()
    await quiet()
  }
  const lays = told.filter((one) => one.startsWith('lay')).map((one) => Number(one.split(' ')[2]) / 20_000)
  assert.deepEqual(lays, [1, 4, 16, 64, 256, 1024, 1024, 1024])
})
