// Whatever name a browser gives to its refusal, and wherever it comes, what reaches a person is in words; what lies in a
// broken row is nobody else's trouble; and once there is room, work goes on without loading anew.

import 'fake-indexeddb/auto'
import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { beforeEach, test } from 'node:test'

const target = new EventTarget()
Object.assign(globalThis, { window: globalThis, addEventListener: target.addEventListener.bind(target),
  dispatchEvent: target.dispatchEvent.bind(target), fetch: async () => Response.json({ build: 'test' }) })
const later = globalThis.setTimeout // waits before reopening pass at once
globalThis.setTimeout = /** @type {any} */ ((/** @type {any} */ work, /** @type {number} */ ms) => (ms > 1000 ? later(() => {}, 0) : later(work, 0)))

const { layBallast } = await import('../../static/storage/ballast.js')
const { writeMeta } = await import('../../static/storage/meta.js')
const { saveDraft } = await import('../../static/storage/drafts.js')
const { storageTrouble } = await import('../../static/storage/standing.js')
const { keepPhoto } = await import('../../static/photo/keep.js')
const { unsentThings } = await import('../../static/copy/unsent.js')
const { keepEntry } = await import('../../static/outbox/keep.js')
const { somebody } = await import('./somebody.js')
const { Trouble } = await import('../../static/words/trouble.js')

const words = ['outbox', 'storage'].map((name) => JSON.parse(readFileSync(new URL(`../../static/words/${name}.json`, import.meta.url), 'utf8')))
const JOB = '01a00000-0000-7000-8000-000000000001', PERSON = '01a00000-0000-7000-8000-000000000002'
// All names that the Indexed Database API 3.0 and its browsers give to what a storage could not do.
const NAMES = ['QuotaExceededError', 'UnknownError', 'AbortError', 'DataError', 'DataCloneError', 'NotReadableError', 'TimeoutError',
  'NotFoundError', 'OperationError', 'EncodingError', 'ConstraintError', 'TransactionInactiveError', 'InvalidStateError', 'SecurityError']

await somebody(PERSON)

const real = Object.fromEntries(['put', 'get'].map((name) => [name, IDBObjectStore.prototype[/** @type {'put'} */ (name)]]))
beforeEach(() => Object.assign(IDBObjectStore.prototype, real))

/** @param {'put' | 'get'} name @param {(store: any, args: any[]) => any} first null to go on */
function before(name, first) {
  IDBObjectStore.prototype[name] = function (/** @type {any[]} */ ...args) {
    return first(this, args) ?? real[name].apply(this, /** @type {any} */ (args))
  }
}

/** The transaction ends by itself with this. @param {any} tx @param {string} name */
function end(tx, name) {
  Object.defineProperty(tx, 'error', { get: () => new DOMException('made to fail', name), set() {} })
  try { tx.abort() } catch { /* ended */ }
}

let n = 0
const photo = (size = 300_000) => {
  const bytes = new Uint8Array(size).fill((n += 1))
  bytes.set([0xff, 0xd8])
  return new File([bytes], 'camera.jpg', { type: 'image/jpeg' })
}
const works = [() => keepPhoto(photo()), () => saveDraft(PERSON, 'draft', 1), () => keepEntry({ job: JOB, kind: 'fit', subject: JOB, body: {} })]

test('every refusal of a write or a reading, at its call or at its end, is told in words', async () => {
  for (const name of NAMES) {
    const ways = [['put', () => { throw new DOMException('made to fail', name) }], ['get', () => { throw new DOMException('made to fail', name) }],
      ['put', (/** @type {any} */ store) => { queueMicrotask(() => end(store.transaction, name)) }]]
    for (const [call, way] of /** @type {any[]} */ (ways)) {
      before(call, way)
      for (const work of call === 'get' ? [works[0], works[2]] : works) {
        const told = await work().then(() => null, (/** @type {any} */ fault) => fault)
        assert.ok(told instanceof Trouble, `${name} at ${call}: ${told}`)
        assert.ok(words.some((texts) => told.code in texts && `${told.code}.way_out` in texts), told.code)
      }
      Object.assign(IDBObjectStore.prototype, real)
    }
  }
  await saveDraft(PERSON, 'draft', 2)
  assert.equal(storageTrouble(), null)
})

test('a large value that finds no room for its file is a full disk: the ballast makes room, and the photo is kept', async () => {
  await layBallast(2)
  let full = true
  before('put', (store) => {
    if (store.name === 'photo_chunks' && full) queueMicrotask(() => end(store.transaction, 'DataError'))
  })
  const clear = IDBObjectStore.prototype.clear
  IDBObjectStore.prototype.clear = function () { full = false; return clear.call(this) }
  assert.equal((await keepPhoto(photo())).size, 300_000)
  IDBObjectStore.prototype.clear = clear
})

test('photos are taken again once there is room, though a connection that met a full disk goes on refusing', async () => {
  await writeMeta(['full'], true)
  let full = true
  const met = new WeakSet()
  before('put', (store) => {
    const { db } = store.transaction
    if (full) met.add(db)
    if (met.has(db)) throw new DOMException('full', 'QuotaExceededError')
  })
  await assert.rejects(keepPhoto(photo()), { code: 'outbox.disk_full' })
  await assert.rejects(keepPhoto(photo()), { code: 'outbox.disk_full' })
  full = false
  assert.equal((await keepPhoto(photo())).size, 300_000)
})

test('one photo whose bytes the browser has lost is named in the copy, and holds nothing else back', async () => {
  const [lost, whole] = [await keepPhoto(photo()), await keepPhoto(photo())]
  for (const { sha256, size } of [lost, whole]) await keepEntry({ job: JOB, kind: 'photo', subject: sha256, body: { sha256, size } })
  for (const name of ['NotReadableError', 'DataError']) {
    before('get', (store, [key]) => {
      if (store.name === 'photo_chunks' && key[0] === lost.sha256) throw new DOMException('Data lost due to missing file.', name)
    })
    const found = new Map()
    for await (const { item } of unsentThings()) found.set(item.name, item.damage)
    assert.deepEqual([found.get(lost.sha256), found.get(whole.sha256)], ['photo_damaged', undefined])
  }
})
