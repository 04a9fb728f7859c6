// The browser around a page: every name that the app's modules reach for, tied to one page of one phone, so that nothing
// but our clock, dice, disk and link decides what they meet.

import * as fake from 'fake-indexeddb'
import { cryptoFor } from './keys.mjs'

const INDEXED_DB = { IDBDatabase: fake.IDBDatabase, IDBObjectStore: fake.IDBObjectStore, IDBIndex: fake.IDBIndex,
  IDBCursor: fake.IDBCursor, IDBTransaction: fake.IDBTransaction, IDBRequest: fake.IDBRequest, IDBKeyRange: fake.IDBKeyRange,
  IDBCursorWithValue: fake.IDBCursorWithValue, IDBOpenDBRequest: fake.IDBOpenDBRequest, IDBVersionChangeEvent: fake.IDBVersionChangeEvent }

/** Names that a page is given. Those of no browser are given as nothing. */
export const GLOBALS = ['window', 'self', 'globalThis', 'document', 'navigator', 'location', 'addEventListener', 'removeEventListener',
  'dispatchEvent', 'setTimeout', 'clearTimeout', 'setInterval', 'clearInterval', 'setImmediate', 'process', 'require', 'fetch', 'indexedDB',
  'crypto', 'Date', 'Math', 'performance', 'Blob', 'File', 'AbortSignal', 'matchMedia', 'caches', 'localStorage', ...Object.keys(INDEXED_DB)]

/** @param {any} page of `phone.mjs` @returns {any[]} values in the order of GLOBALS */
export function globalsOf(page) {
  const { phone } = page
  const { clock, dice } = phone
  const own = eventTarget()
  const document = { ...eventTarget(), visibilityState: 'visible', documentElement: { lang: 'en' } }
  const timers = new Map()
  let timer = 0
  const setTimeout = (work, wait = 0, ...given) => {
    const id = ++timer
    timers.set(id, clock.after(wait, () => (timers.delete(id), work(...given)), page))
    return id
  }
  const clearTimeout = (id) => timers.has(id) && (timers.get(id).cancelled = true)
  const setInterval = (work, wait) => setTimeout(function again() {
    setTimeout(again, wait)
    work()
  }, wait)
  const later = (work) => new Promise((resolve, reject) => clock.after(dice.next() * 0.5, () => {
    try {
      resolve(work())
    } catch (fault) {
      reject(fault)
    }
  }, page))
  const Blob = blobFor(later)
  const given = {
    ...own, ...INDEXED_DB, document, setTimeout, clearTimeout, setInterval, clearInterval: clearTimeout,
    navigator: { language: 'en', userAgent: 'a simulated phone', onLine: true, locks: phone.locks?.of(page) },
    location: { href: 'https://seamwalk.invalid/', hostname: 'seamwalk.invalid', origin: 'https://seamwalk.invalid', reload: () => {} },
    fetch: phone.link.fetchFor(page), indexedDB: phone.disk.factoryFor(page), crypto: cryptoFor(later, phone.dice), isSecureContext: true,
    performance: { now: () => clock.now - page.opened }, Date: dateFor(phone), Math: Object.assign(Object.create(Math), { random: () => phone.dice.next() }),
    Blob, File: fileFor(Blob), AbortSignal: signalFor(setTimeout), matchMedia: () => ({ matches: false }),
  }
  const all = new Proxy(given, { get: (known, name) => (name in known ? known[name] : globalThis[name]) })
  Object.assign(given, { window: all, self: all, globalThis: all })
  page.events = { window: own, document }
  return GLOBALS.map((name) => given[name])
}

function eventTarget() {
  const target = new EventTarget()
  return { addEventListener: target.addEventListener.bind(target), removeEventListener: target.removeEventListener.bind(target),
    dispatchEvent: target.dispatchEvent.bind(target) }
}

function dateFor(phone) {
  return class extends Date {
    constructor(...given) {
      super(...(given.length ? given : [phone.wall()]))
    }

    static now() {
      return phone.wall()
    }
  }
}

function blobFor(later) {
  return class {
    constructor(parts = [], { type = '' } = {}) {
      this.bytes = Buffer.concat(parts.map((part) => Buffer.from(part.bytes ?? part)))
      this.size = this.bytes.length
      this.type = type
    }

    arrayBuffer() {
      return later(() => new Uint8Array(this.bytes).buffer)
    }
  }
}

function fileFor(Blob) {
  return class extends Blob {
    constructor(parts, name, options) {
      super(parts, options)
      this.name = name
    }
  }
}

function signalFor(setTimeout) {
  return { timeout(wait) {
    const aborter = new AbortController()
    setTimeout(() => aborter.abort(new DOMException('too long', 'TimeoutError')), wait)
    return aborter.signal
  } }
}
