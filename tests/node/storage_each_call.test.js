// The capture of a place, run again for each call of the storage, cryptography and file it makes, with that call failing
// in each way it can. The same shim as in Chromium (tests/browser), here over a database in memory, so that every point
// is tried each time.

import 'fake-indexeddb/auto'
import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { test } from 'node:test'
import { runInThisContext } from 'node:vm'

const WAYS = { storage: ['InvalidStateError', 'UnknownError', 'QuotaExceededError', 'closed', 'never', 'unheard'],
  crypto: ['rejects', 'throws'], file: ['rejects', 'empty', 'short'] }
const JOB = '01a00000-0000-7000-8000-000000000001'
const PERSON = '01a00000-0000-7000-8000-000000000002'

const target = new EventTarget()
Object.assign(globalThis, {
  window: globalThis, limits: { 50: 0, 250: 1, 1000: 2, 3000: 25, 15000: 25 },
  addEventListener: target.addEventListener.bind(target), dispatchEvent: target.dispatchEvent.bind(target),
  fetch: async () => Response.json({ build: 'test' }),
  eventFor: (/** @type {string} */ type) => ({ type, initialized: true, eventPath: [],
    stopImmediatePropagation() { this.propagationStopped = this.immediatePropagationStopped = true } }),
})
runInThisContext(readFileSync(new URL('../browser/fail_once.js', import.meta.url), 'utf8'))
const fault = /** @type {any} */ (globalThis).fault

const { withDb } = await import('../../static/storage/database.js')
const { saveDraft, loadDraft } = await import('../../static/storage/drafts.js')
const { keepPhoto } = await import('../../static/photo/keep.js')
const { photoBytes } = await import('../../static/photo/read.js')
const { keepEntry } = await import('../../static/outbox/keep.js')
const { somebody } = await import('./somebody.js')
const { storageTrouble } = await import('../../static/storage/standing.js')

await somebody(PERSON)

/** @type {string[]} */
const saved = []
let n = 0

/** @param {string} kind @param {number} at @param {string} how */
async function capture(kind, at, how) {
  n += 1
  const early = /** @type {string[]} */ ([]), name = `draft ${n}`
  let troubles = 0
  const tell = (/** @type {string} */ one) => { saved.push(one); if (!fault.completed.has(one)) early.push(one) }
  const again = async (/** @type {() => Promise<any>} */ work) => {
    for (let tries = 1; ; tries += 1) {
      try {
        return await work()
      } catch (problem) {
        troubles += 1
        if (tries === 4) throw problem
      }
    }
  }
  const bytes = new Uint8Array(262_144 + 20 + n).fill(n % 251)
  bytes.set([0xff, 0xd8])
  const file = new File([bytes], 'camera.jpg', { type: 'image/jpeg' })
  await fault.quiet(0)
  fault.set(kind, at, how)
  await again(() => saveDraft(PERSON, name, -1))
  await again(() => saveDraft(PERSON, name, n))
  assert.equal(await again(() => loadDraft(PERSON, name)), n)
  const { sha256, size } = await again(() => keepPhoto(file))
  assert.equal(size, bytes.length, 'a photo handed over in part is none')
  tell(sha256)
  tell((await again(() => keepEntry({ job: JOB, kind: 'photo', subject: sha256, body: { sha256, size } }))).digest)
  tell((await again(() => keepEntry({ job: JOB, kind: 'fit', subject: JOB, body: { n }, draft: name }))).digest)
  const { hit, opens } = fault, calls = { ...fault.counts }
  fault.set('', 0, '')
  assert.equal(await loadDraft(PERSON, name), null, `${kind} ${at} ${how} (${hit}): the draft outlives its entry`)
  assert.deepEqual(early, [], `${kind} ${at} ${how} (${hit}): said saved before it was complete`)
  assert.ok(opens <= 4, `${kind} ${at} ${how} (${hit}): opened ${opens} times`)
  // A storage that failed once is nobody's trouble. Of a full disk is told what no room would mend: a reading, and that
  // there is none for photos.
  const unseen = kind === 'storage' && (how !== 'QuotaExceededError' || (hit.startsWith('put') && hit !== 'put ballast'))
  assert.ok(!unseen || troubles === 0, `${kind} ${at} ${how} (${hit}): ${troubles} troubles told`)
  return { hit, calls }
}

test('each call fails once in each way, and what was said to be saved is there, once, and was complete when it was said', async () => {
  await capture('', 0, '')
  const { calls } = await capture('', 0, '')
  let points = 0
  for (const [kind, ways] of Object.entries(WAYS)) {
    for (const how of ways) {
      for (let at = 1; at <= calls[kind]; at += 1) {
        const { hit } = await capture(kind, at, how)
        assert.ok(hit, `${kind} ${at} ${how} was not met`)
        points += 1
      }
    }
  }
  console.log(`calls of one capture: ${JSON.stringify(calls)}; failed at ${points} points; ${saved.length} saved`)
  assert.deepEqual([...fault.relaxed].filter((stores) => !['ballast,meta', 'ballast'].includes(stores)), [])
  assert.equal(storageTrouble(), null)
  const rows = (/** @type {string} */ store) => withDb([store], 'readonly', (tx) => tx.store.getAll())
  const found = [...(await rows('photos')).map((row) => row.sha256), ...(await rows('entries')).map((row) => row.digest)]
  assert.deepEqual(found.sort(), [...saved].sort(), 'nothing lost, nothing twice')
  const chain = (await rows('outbox')).filter((row) => row.what === 'entry').map((row) => row.seq).sort((a, b) => a - b)
  assert.deepEqual(chain, chain.map((_, at) => at))
  assert.equal(chain.length, 2 * n)
  for (const { sha256, size } of await rows('photos')) assert.equal((await photoBytes(sha256)).bytes.length, size)
})

test('the same photo kept twice at once, one of the two failing anywhere: what is told as saved has its bytes', async () => {
  let failed = 0
  for (let at = 1; at <= 14; at += 1) {
    const bytes = new Uint8Array(300_000).fill(at)
    bytes.set([0xff, 0xd8])
    const both = [1, 2].map(() => keepPhoto(new File([bytes], 'twice.jpg', { type: 'image/jpeg' })))
    fault.set('crypto', at, 'rejects')
    const ended = await Promise.allSettled(both)
    fault.set('', 0, '')
    for (const one of ended) {
      if (one.status === 'rejected') failed += 1
      else assert.equal((await photoBytes(one.value.sha256)).bytes.length, 300_000, `${at}: saved, and its bytes are gone`)
    }
  }
  assert.ok(failed > 5, 'the failures met the photos')
})

test('a disk so full that nothing can be dropped either is said in words, and what comes after it is kept', async () => {
  const file = new File([new Uint8Array(3000).fill(0xff).fill(0xd8, 1, 2)], 'full.jpg', { type: 'image/jpeg' })
  const entry = { job: JOB, kind: 'fit', subject: JOB, body: { full: true } }
  const real = ['put', 'delete', 'clear'].map((name) => [name, IDBObjectStore.prototype[name]])
  for (const [name] of real) IDBObjectStore.prototype[name] = () => { throw new DOMException('full', 'QuotaExceededError') }
  const codes = []
  for (const work of [() => keepPhoto(file), () => keepEntry(entry), () => saveDraft(PERSON, 'full', 1)]) {
    codes.push(await work().then(() => 'kept', (/** @type {any} */ problem) => problem.code))
  }
  assert.deepEqual(codes, ['outbox.disk_full', 'outbox.disk_full', 'outbox.disk_full'])
  assert.equal(storageTrouble(), 'outbox.disk_full', 'the draft stands on the screen only, and that is said')
  assert.equal(await loadDraft(PERSON, 'full'), 1)
  for (const [name, method] of real) IDBObjectStore.prototype[name] = method
  assert.equal((await keepPhoto(file)).size, 3000)
  await keepEntry({ ...entry, draft: 'full' })
  assert.equal(await loadDraft(PERSON, 'full'), null)
  assert.equal(storageTrouble(), null)
})
