// Who may record in a window, and whose way out of it must never be barred.

import 'fake-indexeddb/auto'
import assert from 'node:assert/strict'
import { beforeEach, test } from 'node:test'

const target = new EventTarget()
const phone = { userAgent: '', maxTouchPoints: 0, standalone: false }
Object.defineProperty(globalThis, 'navigator', { value: phone })
Object.assign(globalThis, { window: globalThis, addEventListener: target.addEventListener.bind(target),
  dispatchEvent: target.dispatchEvent.bind(target), matchMedia: () => ({ matches: phone.standalone }) })

const { recordingHere, warned } = await import('../../static/shell/recording.js')
const { dropDraft, openDrafts, saveDraft } = await import('../../static/storage/drafts.js')
const { changePerson, setCurrent } = await import('../../static/people/current.js')

const [ANN, BOB] = ['01a00000-0000-7000-8000-000000000002', '01a00000-0000-7000-8000-000000000003']
const APPLE = 'Mozilla/5.0 (iPhone; CPU iPhone OS 99_0 like Mac OS X) AppleWebKit/1 Version/99.0 Mobile Safari/1'
const put = IDBObjectStore.prototype.put
beforeEach(() => { IDBObjectStore.prototype.put = put })

/** @param {string} userAgent @param {number} maxTouchPoints @param {boolean} [standalone] */
const on = (userAgent, maxTouchPoints, standalone = false) => Object.assign(phone, { userAgent, maxTouchPoints, standalone })

test('a desk records in any browser, a home screen records, and nobody is asked for drafts there', async () => {
  for (const [agent, touches, home] of /** @type {[string, number, boolean][]} */ ([
    ['Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15) AppleWebKit/1 Version/99.0 Safari/1', 0, false],
    ['Mozilla/5.0 (Macintosh; Intel Mac OS X 10.15; rv:99.0) Gecko/20100101 Firefox/99.0', 0, false],
    ['Mozilla/5.0 (Windows NT 10.0; Win64; x64; rv:99.0) Gecko/20100101 Firefox/99.0', 10, false],
    ['Mozilla/5.0 (X11; CrOS x86_64 99.0) AppleWebKit/1 Chrome/99 Safari/1', 10, false], [APPLE, 5, true]])) {
    on(agent, touches, home)
    assert.equal(await recordingHere(), 'yes', agent)
  }
})

test('what somebody began in a plain window is ended there, of the other person on the phone as well', async () => {
  on(APPLE, 5)
  for (const id of [ANN, BOB]) await changePerson(id, { name: 'Ann (invented)' })
  assert.equal(await recordingHere(), 'install', 'nobody signed in')
  await saveDraft(BOB, 'walk', { note: 'half' })
  await saveDraft(ANN, 'ticks/job', { a: 1 })
  await setCurrent(ANN, false)
  assert.equal(await recordingHere(), 'install')
  await setCurrent(BOB, false)
  assert.equal(await recordingHere(), 'finish')
  await dropDraft(BOB, 'walk')
  assert.equal(await recordingHere(), 'install')
})

test('a notice that was read is left behind, though a full disk takes no note of it', async () => {
  on('Mozilla/5.0 (Linux; Android 99; K) AppleWebKit/1 Chrome/99 Mobile Safari/1', 5)
  assert.equal(await recordingHere(), 'warn')
  IDBObjectStore.prototype.put = () => { throw new DOMException('full', 'QuotaExceededError') }
  await warned()
  assert.equal(await recordingHere(), 'yes')
})

test('ticks on a list hold up no new build, a draft does', async () => {
  await saveDraft(ANN, 'ticks/job', { a: 1 })
  assert.equal(await openDrafts(), 0)
  await saveDraft(ANN, 'new-finding', { found: 'half' })
  assert.equal(await openDrafts(), 1)
})
