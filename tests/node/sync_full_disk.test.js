// A disk that takes nothing at all does not stop what is to be sent: sending is what makes room.

import 'fake-indexeddb/auto'
import assert from 'node:assert/strict'
import { test } from 'node:test'

const target = new EventTarget()
Object.assign(globalThis, { window: globalThis, location: { href: 'https://office.invalid/' }, addEventListener: target.addEventListener.bind(target),
  dispatchEvent: target.dispatchEvent.bind(target), fetch: serve })

const { withDb } = await import('../../static/storage/database.js')
const { writeMeta } = await import('../../static/storage/meta.js')
const { keepPhoto } = await import('../../static/photo/keep.js')
const { keepEntry } = await import('../../static/outbox/keep.js')
const { counts } = await import('../../static/outbox/counts.js')
const { round } = await import('../../static/sync/round.js')
const { makeKey } = await import('../../static/entry/key.js')
const { signJws } = await import('../../static/entry/sign.js')
const { digestOf } = await import('../../static/entry/digest.js')
const { setCurrent } = await import('../../static/people/current.js')
const { somebody } = await import('./somebody.js')

const JOB = '01a00000-0000-7000-8000-000000000001', PEOPLE = ['01a00000-0000-7000-8000-000000000002', '01a00000-0000-7000-8000-000000000003']
const server = await makeKey()
/** @type {string[]} */
const came = []

/** The office, as far as sending goes. @param {string} path @param {any} asked */
async function serve(path, asked) {
  const of = { 'Seamwalk-Answer': asked?.headers?.['Seamwalk-Ask'] ?? '', 'Tus-Resumable': '1.0.0' }
  if (path === '/api/photos') return new Response('', { status: 201, headers: { ...of, Location: '/api/photos/u' } })
  if (path === '/api/photos/u') {
    const offset = Number(asked.headers['Upload-Offset']) + asked.body.byteLength
    return new Response(null, { status: 204, headers: { ...of, 'Upload-Offset': String(offset) } })
  }
  if (path.startsWith('/api/photos/receipt')) {
    const photo = path.slice(-64)
    came.push(photo)
    const { token } = await signJws({ v: 1, kind: 'receipt', job: JOB, photo, size: 3000, seq: 1, n: 1 }, 'seamwalk-statement', server)
    return Response.json({ receipt: token }, { headers: of })
  }
  const body = asked?.body ? JSON.parse(asked.body) : {}
  /** @type {Record<string, () => any>} */
  const answers = {
    '/api/nonce': () => ({ nonce: 'n' }), '/api/delivery': () => ({ token: 't', scope: 'full' }), '/api/manifest': () => ({}),
    '/api/entries': async () => ({ answers: await Promise.all(body.entries.map(receipt)) }),
  }
  if (!answers[path]) return Response.json({ build: 'test' }, { headers: { 'Seamwalk-Answer': asked?.headers?.['Seamwalk-Ask'] ?? '' }, status: 503 })
  return Response.json(await answers[path](), { headers: { 'Seamwalk-Answer': asked.headers['Seamwalk-Ask'] } })
}

/** @param {string} entry */
async function receipt(entry) {
  const digest = await digestOf(entry.slice(0, entry.lastIndexOf('.')))
  came.push(digest)
  const { token } = await signJws({ v: 1, kind: 'receipt', job: JOB, entry: digest, seq: 1, n: 1 }, 'seamwalk-statement', server)
  return { digest, status: 'accepted', receipt: token }
}

/** What the disk takes from now on. @param {boolean} all */
function disk(all) {
  for (const [name, method] of real) IDBObjectStore.prototype[name] = all ? method : () => { throw new DOMException('full', 'QuotaExceededError') }
}
const real = /** @type {any[]} */ (['put', 'delete', 'clear'].map((name) => [name, IDBObjectStore.prototype[/** @type {'put'} */ (name)]]))

test('of two people on one phone every entry and photo goes, over several batches, and is counted as unsent until that can be noted', async () => {
  await writeMeta(['server'], { kid: server.kid, jwk: server.jwk })
  for (const person of PEOPLE) {
    await somebody(person)
    for (let n = 0; n < 30; n += 1) await keepEntry({ job: JOB, kind: 'fit', subject: JOB, body: { n, text: 'x'.repeat(300) } })
  }
  const { sha256, size } = await keepPhoto(new File([new Uint8Array(3000).fill(0xff).fill(0xd8, 1, 2)], 'camera.jpg'))
  await keepEntry({ job: JOB, kind: 'photo', subject: sha256, body: { sha256, size } })
  disk(false)
  const { trouble } = await round(false)
  assert.equal(trouble?.code, 'outbox.disk_full')
  assert.equal(new Set(came).size, 62)
  const { entries, others } = await counts()
  assert.deepEqual([entries, others], [31, 30], 'nothing is shown as sent that the phone could not note')
  disk(true)
  await round(false)
  assert.deepEqual(await counts().then((now) => [now.entries, now.photos, now.others]), [0, 0, 0])
})

test('a phone whose disk is full is opened by the next person while its ballast makes room', async () => {
  await withDb(['ballast'], 'readwrite', (tx) => tx.store.put(new ArrayBuffer(8), 0))
  let full = true
  IDBObjectStore.prototype.put = function (...args) {
    if (full) throw new DOMException('full', 'QuotaExceededError')
    return real[0][1].apply(this, args)
  }
  IDBObjectStore.prototype.clear = function () { full = false; return real[2][1].call(this) }
  await setCurrent(PEOPLE[0], false)
  disk(true)
  assert.equal((await withDb(['meta'], 'readonly', (tx) => tx.store.get(['current']))).person, PEOPLE[0])
})
