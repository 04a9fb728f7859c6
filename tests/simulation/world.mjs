// One run: a server, some phones, one clock. What is counted of it is added up over all runs.

import { Checker } from './checker.mjs'
import { Clock } from './clock.mjs'
import { install } from './disk.mjs'
import { Phone } from './phone.mjs'
import { ask } from './server.mjs'

/** @type {World} the one that runs */
let running
install(() => running?.clock)

/** @type {Record<string, number>} */
export const totals = {}

export class World {
  clock = new Clock()
  /** @type {Record<string, Phone>} */
  phones = {}
  up = true
  setBack = false // whether the server's store was lost, and a backup put in its place
  checker = new Checker(this)

  /** @param {Record<'this' | 'next', Function>} builds @param {{seed: number, locks: boolean, now?: number}} given `locks`: whether the
   * browsers have any; `now`: ms, not before what the server's disk speaks of */
  constructor(builds, { seed, locks, now = 0 }) {
    this.clock.now = now
    Object.assign(this, { builds, seed, locks }, ask({ op: 'begin' }))
    running = this
  }

  /** @param {string} name @param {any} [from] as of `Phone` */
  add(name, from) {
    this.phones[name] = new Phone(this, name, this.seed * 31 + name.charCodeAt(0), from)
    return this.phones[name]
  }

  /** @param {string} what @param {number} [by] */
  count(what, by = 1) {
    totals[what] = (totals[what] ?? 0) + by
  }

  serverUp() {
    return this.up
  }

  /** It starts again after a while. @param {number} [wait] ms */
  serverDied(wait = 3000) {
    this.count('server kills')
    this.up = false
    this.clock.after(wait, () => { this.up = true }, this)
  }

  /** Ask the real server for something that no phone may. @param {string} op @param {Record<string, any>} [more] */
  server(op, more = {}) {
    const answer = ask({ op, now: this.clock.now, ...more })
    if (answer.killed) this.serverDied()
    return answer
  }

  /** Call the app on a page and wait for it. @param {any} page @param {(app: any) => Promise<any>} call @param {number} [ms] patience */
  async asked(page, call, ms = 120_000) {
    let end = null
    this.clock.as(page, () => call(page.app)).then((value) => { end = { value } }, (fault) => { end = { fault } })
    await this.clock.run({ ms, done: () => end !== null })
    return end ?? { fault: new Error('it did not settle') }
  }
}
