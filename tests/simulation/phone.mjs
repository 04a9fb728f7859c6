// A phone: a disk, a clock that may be wrong, a link, and the pages that are open in its browser. A page is the app's
// own modules, loaded afresh; closing it drops them with all that they were about to do.

import { Dice } from './dice.mjs'
import { Disk } from './disk.mjs'
import { globalsOf } from './globals.mjs'
import { Link } from './link.mjs'
import { Locks } from './locks.mjs'

const BEGINNING = Date.UTC(2020, 0, 1, 12)

export class Phone {
  /** @param {any} world @param {string} name @param {number} seed of what its browser throws by itself @param {any} [from] a copied disk and its cookies */
  constructor(world, name, seed, from = {}) {
    Object.assign(this, { world, name, clock: world.clock, dice: new Dice(seed), build: 'this', wrong: 0, pages: [], backup: null, drafts: 0, noted: new Map() })
    this.cookies = new Map(from.cookies ?? [])
    this.link = new Link(this, world)
    this.life = `${name} 0`
    this.boot(from.stores)
  }

  /** What its clock shows, ms since 1970. */
  wall() {
    return BEGINNING + this.clock.now + this.wrong
  }

  /** The browser starts, on what lies on the disk. */
  boot(stores = { version: 0, stores: [] }) {
    this.disk = new Disk(this, stores)
    this.locks = this.world.locks ? new Locks() : undefined
    this.pages = []
  }

  /** Open a page. @param {number} tab 0 or 1; what was open there is closed */
  open(tab) {
    if (this.pages[tab]) this.close(tab)
    const page = { phone: this, dead: false, frozen: false, held: [], opens: new Set(), connections: new Set(), opened: this.clock.now, build: this.build }
    this.pages[tab] = page
    this.clock.as(page, () => {
      page.app = this.world.builds[this.build](...globalsOf(page))
      page.app.startSync()
      page.app.capable()
    })
    return page
  }

  /** @param {number} tab */
  page(tab) {
    return this.pages[tab] ?? this.open(tab)
  }

  /** The page is gone in the middle of whatever it did. @param {number} tab */
  close(tab) {
    const page = this.pages[tab]
    if (!page) return
    page.dead = true
    this.disk.drop(page)
    this.locks?.leave(page)
    this.pages[tab] = undefined
  }

  /** The whole browser is killed, or the battery is empty. Its clock goes on. */
  die() {
    for (const page of this.pages) if (page) page.dead = true
    this.boot(this.disk.cut())
  }

  /** Put to sleep, as a browser does it: not over an open transaction. @param {number} tab */
  freeze(tab) {
    const page = this.pages[tab]
    if (!page || page.frozen) return
    this.clock.as(page, () => page.events.document.dispatchEvent(new Event('freeze')))
    page.frozen = true
  }

  /** @param {number} tab */
  thaw(tab) {
    const page = this.pages[tab]
    if (!page?.frozen) return
    this.clock.thaw(page)
    this.clock.as(page, () => page.events.window.dispatchEvent(new Event('pageshow')))
  }

  /** Everything on it is erased. */
  wipe(stores) {
    for (const tab of [0, 1]) this.close(tab)
    this.disk.process.dead = true
    this.cookies.clear()
    this.noted.clear()
    this.life = `${this.name} ${this.clock.done}`
    this.boot(stores)
  }
}
