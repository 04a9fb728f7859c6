// A phone's storage: fake-indexeddb, whose tasks go by our clock, and around it what a real disk does. It keeps only
// what was committed, loses what was not yet flushed when the power goes, fills up, stops answering, is copied and put back.

import Database from '../../node_modules/fake-indexeddb/build/esm/lib/Database.js'
import Index from '../../node_modules/fake-indexeddb/build/esm/lib/Index.js'
import ObjectStore from '../../node_modules/fake-indexeddb/build/esm/lib/ObjectStore.js'
import { IDBFactory, IDBOpenDBRequest, forceCloseDatabase } from 'fake-indexeddb'

const NAME = 'seamwalk'

export class Disk {
  /** @param {any} phone with `clock` and `dice` @param {any} stores what lies on it, as of `copy` */
  constructor(phone, stores) {
    Object.assign(this, { phone, process: { dead: false, phone }, free: Infinity, broken: [], unflushed: [], last: 0 })
    this.#put(stores)
  }

  /** `indexedDB` of one page. @param {any} page its connections are known to it, so that they end with it */
  factoryFor(page) {
    return {
      open: (...asked) => {
        const trouble = page.dead ? 'silent' : this.broken.shift()
        if (trouble === 'error') throw new DOMException('the storage is gone', 'UnknownError')
        if (trouble === 'silent') return new IDBOpenDBRequest()
        const request = this.factory.open(...asked)
        page.opens.add(request)
        const known = () => this.#connected(page, request.result)
        request.addEventListener('upgradeneeded', known)
        request.addEventListener('success', () => (page.opens.delete(request), known()))
        request.addEventListener('error', () => page.opens.delete(request))
        return request
      },
    }
  }

  #connected(page, connection) {
    if (page.connections.has(connection)) return
    page.connections.add(connection)
    const { transaction } = connection
    connection.transaction = (...asked) => {
      const tx = transaction.apply(connection, asked)
      tx.addEventListener('complete', () => this.#flush(tx))
      return tx
    }
  }

  /** What a strict commit writes to the disk takes all before it along. */
  #flush(tx) {
    if (tx.mode === 'readonly') return
    if (tx.durability === 'strict' || tx.mode === 'versionchange') this.unflushed = []
    else this.unflushed.push(tx._rollbackLog)
  }

  /** The page is gone: what it had not committed never was. */
  drop(page) {
    this.phone.clock.as(this.process, () => {
      for (const request of page.opens) {
        request.listeners = []
        request.onupgradeneeded = () => { throw new Error('the page is gone') }
        request.onsuccess = () => request.result.close()
      }
      for (const connection of page.connections) {
        for (const tx of open(connection)) tx._abort('AbortError')
        connection.close()
      }
      this.raw?.processTransactions()
    })
  }

  /** The storage process dies under every page, and answers the next openings as told. @param {('error' | 'silent')[]} how */
  breakDown(how) {
    this.broken = how
    this.phone.clock.as(this.process, () => {
      for (const connection of [...this.raw?.connections ?? []]) {
        for (const tx of open(connection)) tx._abort('UnknownError')
        forceCloseDatabase(connection)
      }
      this.raw?.processTransactions()
    })
  }

  /** Whether a page has a transaction open. */
  busy(page) {
    return page.opens.size > 0 || [...page.connections].some((connection) => open(connection).length > 0)
  }

  /** Whether some page is in the middle of a change. */
  writing() {
    return Boolean(this.raw?.transactions.some((tx) => tx._started && tx._state !== 'finished' && tx.mode !== 'readonly'))
  }

  /** The power goes: of what no strict commit has flushed, the latest may be gone. */
  cut() {
    this.process.dead = true
    for (const tx of this.raw?.transactions.filter((one) => one._state !== 'finished') ?? []) undo(tx._rollbackLog)
    const kept = this.phone.dice.between(0, this.unflushed.length)
    for (const log of this.unflushed.slice(kept).reverse()) undo(log)
    return this.copy()
  }

  get raw() {
    return this.factory._databases.get(NAME)
  }

  /** The rows of a store, as they lie there now, in order of their keys. @param {string} store @returns {any[]} */
  rows(store) {
    return this.records(store).map(({ value }) => value)
  }

  /** @param {string} store @returns {{key: any, value: any}[]} */
  records(store) {
    const raw = this.raw?.rawObjectStores.get(store)
    return raw ? [...raw.records.values()] : []
  }

  /** What lies on it. Rows are shared, since nobody ever changes one: they are cloned on the way in and out. */
  copy() {
    const stores = [...this.raw?.rawObjectStores.values() ?? []].map(({ name, keyPath, rawIndexes, records }) => ({
      name, keyPath, indexes: [...rawIndexes.values()].map((one) => [one.name, one.keyPath, one.multiEntry, one.unique]),
      records: [...records.values()].map(({ key, value }) => ({ key, value })),
    }))
    return { version: this.raw?.version ?? 0, stores }
  }

  #put({ version, stores }) {
    this.factory = new IDBFactory()
    if (!version) return
    const raw = new Database(NAME, version)
    for (const { name, keyPath, indexes, records } of stores) {
      const store = new ObjectStore(raw, name, keyPath, false)
      for (const index of indexes) {
        const made = new Index(store, ...index)
        made.initialized = true
        store.rawIndexes.set(index[0], made)
      }
      for (const record of records) store.storeRecord({ ...record }, false)
      raw.rawObjectStores.set(name, store)
    }
    this.factory._databases.set(NAME, raw)
  }

  /** A task of the storage process, in its turn. @param {() => void} work */
  task(work) {
    const { clock, dice } = this.phone
    if (work.name === 'waitForOthersClosed') return clock.after(50, work, this.process) // asks again and again
    this.last = Math.max(this.last, clock.now + (dice.hits(0.1) ? dice.next() * 4 : 0.05))
    return clock.after(this.last - clock.now, work, this.process)
  }

  /** @param {number} size of what is to be written; less than nothing for what is given back */
  take(size) {
    if (size > this.free) throw new DOMException('no room', 'QuotaExceededError')
    this.free -= size
  }
}

const open = (connection) => connection._rawDatabase.transactions.filter((tx) => tx.db === connection && tx._state !== 'finished')

function undo(log) {
  for (const step of [...log].reverse()) step()
}

/** Have every task of fake-indexeddb go by the clock of the phone that is at it, and every write ask for room. */
export function install(clockNow) {
  globalThis.setImmediate = (work) => clockNow().owner.phone.disk.task(work)
  const { storeRecord, deleteRecord, clear } = ObjectStore.prototype
  ObjectStore.prototype.storeRecord = function (record, once, log) {
    const disk = clockNow()?.owner.phone?.disk
    if (log && disk && disk.free !== Infinity) disk.take(sizeOf(record.value))
    return storeRecord.call(this, record, once, log)
  }
  const giving = (method, of) => function (...asked) {
    const disk = clockNow()?.owner.phone?.disk
    if (disk && disk.free !== Infinity) for (const { value } of of(this, asked[0])) disk.take(-sizeOf(value))
    return method.apply(this, asked)
  }
  ObjectStore.prototype.deleteRecord = giving(deleteRecord, (store, key) => [...one(store, key)])
  ObjectStore.prototype.clear = giving(clear, (store) => [...store.records.values()])
}

function one(store, key) {
  if (key && typeof key === 'object' && 'lower' in key) return store.records.values(key)
  const found = store.records.get(key)
  return found ? [found] : []
}

/** Bytes that a value takes, roughly. @param {any} value @returns {number} */
function sizeOf(value) {
  if (value instanceof ArrayBuffer) return value.byteLength
  if (typeof value === 'string') return value.length
  if (value === null || typeof value !== 'object') return 8
  return Object.values(value).reduce((sum, one) => sum + sizeOf(one), 16)
}
