// A build that takes over late, or by itself, loads nothing anew under a person who has meanwhile begun something.

import 'fake-indexeddb/auto'
import assert from 'node:assert/strict'
import { test } from 'node:test'

class Drawing extends EventTarget {}
class Canvas extends EventTarget {}
const page = new EventTarget(), doc = Object.assign(new EventTarget(), { visibilityState: 'visible' })
let rests = 0 // ms
const old = { state: 'activated', postMessage: (/** @type {any} */ _, /** @type {MessagePort[]} */ [port]) => { port.postMessage(rests); rests += 300 } }
const workers = Object.assign(new EventTarget(), { controller: old, register: async () => registration })
const registration = Object.assign(new EventTarget(), { active: { state: 'activated' }, installing: null, waiting: /** @type {any} */ (null),
  update: async () => {} })
let loads = 0
delete /** @type {any} */ (globalThis).BroadcastChannel // the only window
Object.defineProperty(globalThis, 'navigator', { value: { serviceWorker: workers, userAgent: '', maxTouchPoints: 0 } })
Object.assign(globalThis, { window: globalThis, document: doc, addEventListener: page.addEventListener.bind(page), dispatchEvent: page.dispatchEvent.bind(page),
  location: { reload: () => { loads += 1 } }, HTMLCanvasElement: Canvas, SVGElement: Drawing, fetch: async () => Response.json({ build: 'x' }) })
registration.active = Object.assign(new EventTarget(), { state: 'activated' })
const later = globalThis.setTimeout
globalThis.setTimeout = /** @type {any} */ ((/** @type {any} */ work, /** @type {number} */ ms, /** @type {any[]} */ ...given) => (ms > 1000 ? 0 : later(work, 1, ...given)))
globalThis.setInterval = /** @type {any} */ (() => 0)

const { startInHand } = await import('../../static/shell/in_hand.js')
const { applyUpdate, startUpdates } = await import('../../static/shell/update.js')
startInHand()
await startUpdates()

/** A next build that waits, and goes on only when the old one lets it. */
const waits = () => { registration.waiting = { state: 'installed', postMessage: (/** @type {any} */ _, /** @type {MessagePort[]} */ [port]) => port.close() } }
const takesOver = async () => {
  registration.waiting.state = 'activated'
  registration.waiting = null
  workers.dispatchEvent(new Event('controllerchange'))
  await new Promise((done) => later(done, 30))
}

test('what a person asked for and did not go through is over: later it waits for what is typed', async () => {
  waits()
  await assert.rejects(applyUpdate(), { code: 'shell.update_stuck' })
  page.dispatchEvent(new Event('input'))
  await takesOver()
  assert.equal(loads, 0, 'loaded anew under what was typed')
  page.dispatchEvent(new Event('hashchange'))
  for (let looks = 0; !loads && looks < 100; looks += 1) await new Promise((done) => later(done, 30))
  assert.equal(loads, 1)
})
