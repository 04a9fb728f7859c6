// Cut a copy between its members, so that a large one goes to the office in requests of a bearable size. The office is
// the judge of what is in them: what looks like no header here goes along unchanged.

import { BLOCK, END, announced } from './tar.js'

const PART = 1024 * 1024 // a photo that is larger is a part of its own
const LARGEST = 64 * 1024 * 1024 // no member of a copy is larger: what claims to be is damaged
const WINDOW = 256 * 1024

/** @typedef {{from: number, to: number, body: Blob}} Part bytes of the file, and an archive of its own */

/** @param {Blob} file @param {number} [from] where to go on @returns {AsyncGenerator<Part>} */
export async function* partsOf(file, from = 0) {
  const read = windows(file)
  const part = (/** @type {number} */ to) => ({ from, to, body: new Blob(to < file.size ? [file.slice(from, to), END] : [file.slice(from, to)]) })
  for (let at = from; at < file.size;) {
    const size = announced(await read(at))
    const next = Math.min(file.size, at + BLOCK + (size !== null && size <= LARGEST ? size : 0))
    if (next - from > PART && at > from) {
      yield part(at)
      from = at
    }
    at = next
  }
  if (from < file.size) yield part(file.size)
}

/** Blocks of a file, read many at a time. @param {Blob} file */
function windows(file) {
  let start = 0
  let held = new Uint8Array(0)
  return async (/** @type {number} */ at) => {
    if (at < start || at + BLOCK > start + held.length) {
      start = at
      held = new Uint8Array(await file.slice(at, at + WINDOW).arrayBuffer())
    }
    return held.subarray(at - start, at - start + BLOCK)
  }
}
