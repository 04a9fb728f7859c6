// Dates as people write them: the hour its writer's clock showed, in the language of whoever reads.

import { test } from 'node:test'
import assert from 'node:assert/strict'

globalThis.document = /** @type {any} */ ({ documentElement: { lang: '' } })
globalThis.window = /** @type {any} */ (new EventTarget())
globalThis.localStorage ??= /** @type {any} */ ({ getItem: () => null, setItem: () => {} })
const { setLanguage } = await import('../../static/words/say.js')
const { spelled, spelledHere } = await import('../../static/frame/spelled.js')

const plain = (/** @type {string} */ text) => text.replace(/\s/g, ' ')

test('a recorded time is the hour that its writer read, wherever this phone is', () => {
  setLanguage('en')
  assert.equal(plain(spelled('2026-11-28T17:05:09.120-05:00')), 'Nov 28, 2026, 5:05 PM')
  assert.equal(plain(spelled('2026-11-28T17:05:09.120+09:00')), 'Nov 28, 2026, 5:05 PM')
  assert.equal(plain(spelled('2026-11-28')), 'Nov 28, 2026')
  setLanguage('es')
  assert.equal(plain(spelled('2026-11-28T17:05:09.120-05:00')), '28 nov 2026, 17:05')
  assert.equal(plain(spelled('2026-01-02')), '2 ene 2026')
})

test("a moment of the office's is told by this phone's own clock", () => {
  setLanguage('es')
  const at = Date.UTC(2026, 10, 28, 12, 30)
  const here = new Intl.DateTimeFormat('es', { dateStyle: 'medium', timeStyle: 'short' }).format(at)
  assert.equal(spelledHere('2026-11-28T12:30:00.000+00:00'), here)
  assert.equal(spelledHere(at), here)
})

test('what is no time is a dash', () => {
  for (const none of ['', null, undefined, 'soon', '2026-1-2']) assert.equal(spelled(none), '—')
  assert.equal(spelledHere('soon'), '—')
})
