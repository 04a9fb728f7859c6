// The browser's own files as the ballast's worker meets them, in memory (File System Standard, WHATWG: one who has a file
// open to write shuts out all others, by `NoModificationAllowedError`). The worker's own text runs.

import { readFileSync } from 'node:fs'

const TEXT = readFileSync(new URL('../../static/storage/ballast_file.js', import.meta.url), 'utf8')

/** `size` of the ballast, `open`: somebody has it; `room` of the whole disk; `tried`: how often room was looked for. */
export const disk = { size: 0, tried: 0, room: Infinity, open: false, files: true, promises: false, workers: 0, ended: 0, given: () => {} }

class Handle {
  constructor() {
    disk.open = true
    this.held = disk.size
    this.wrote = false
  }

  getSize() { return later(disk.size) }

  truncate(/** @type {number} */ size) {
    disk.size = size
    if (this.wrote && size === this.held) disk.tried += 1
    else if (!size) disk.given()
    return later(undefined)
  }

  flush() { return later(undefined) }

  close() {
    disk.open = false
    return later(undefined)
  }

  write(/** @type {Uint8Array} */ block, /** @type {{at: number}} */ { at }) {
    this.wrote = true
    if (at + block.length > disk.room) throw refused('QuotaExceededError')
    disk.size = Math.max(disk.size, at + block.length)
    return block.length
  }
}

/** Older browsers promise what newer ones give. @param {any} value */
const later = (value) => (disk.promises ? Promise.resolve(value) : value)
const refused = (/** @type {string} */ name) => new DOMException('made to fail', name)

const place = {
  async createSyncAccessHandle() {
    if (disk.open) throw refused('NoModificationAllowedError')
    return new Handle()
  },
}
const folder = {
  async getFileHandle() {
    if (!disk.files) throw refused('QuotaExceededError')
    return place
  },
}
export const storage = { getDirectory: async () => folder }

/** Runs the worker's text. One that was ended says nothing more. */
export class FileWorker {
  /** @type {(event: {data: string}) => void} */ onmessage = () => {}
  ended = false

  constructor() {
    disk.workers += 1
    this.self = /** @type {any} */ ({ postMessage: (/** @type {string} */ data) => this.ended || this.onmessage({ data }) })
    const navigator = { storage: { getDirectory: async () => (this.ended ? new Promise(() => {}) : folder) } }
    new Function('self', 'navigator', TEXT)(this.self, navigator)
  }

  postMessage(/** @type {{size: number, why: string}} */ data) { this.self.onmessage({ data }) }

  terminate() {
    if (!this.ended) disk.ended += 1
    this.ended = true
  }
}

/** As at the start of a test. */
export function emptied() {
  Object.assign(disk, { size: 0, tried: 0, room: Infinity, open: false, files: true, promises: false, workers: 0, ended: 0, given: () => {} })
}
