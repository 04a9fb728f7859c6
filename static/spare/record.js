// What a file of the spare copy holds, one after the other: a line that says what it is, how long, and a digest of what it
// says, then its bytes.
//
// Where a line cannot be read the next one that can is looked for: what is damaged hides nothing behind it. Room that was
// taken ahead is zeros.

import { digestOf } from '../entry/digest.js'

const LINE = 4096 // bytes; no line is longer
const WINDOW = 256 * 1024
const NEWLINE = 10
const FRONT = new TextEncoder().encode('{"what":"')

/** @typedef {{what: 'entry' | 'photo', person: string, name: string, size: number, [more: string]: any}} Head */
/** @typedef {{head: Head, body: Blob}} Item */

/** @param {Omit<Head, 'size'>} head `what` comes first @param {Uint8Array} bytes @returns {Promise<Uint8Array<ArrayBuffer>>} */
export async function packed(head, bytes) {
  const said = JSON.stringify({ ...head, size: bytes.length })
  const line = new TextEncoder().encode(`${said} ${await digestOf(said)}\n`)
  const all = new Uint8Array(line.length + bytes.length)
  all.set(line)
  all.set(bytes, line.length)
  return all
}

/** @param {Blob} file @returns {AsyncGenerator<Item>} whether the bytes are what was put in is not looked at */
export async function* itemsOf(file) {
  for (let at = 0; at < file.size;) {
    const line = new Uint8Array(await file.slice(at, at + LINE).arrayBuffer())
    const end = line.indexOf(NEWLINE)
    const head = end > 0 ? await headOf(line.subarray(0, end)) : null
    const from = at + end + 1
    if (head && from + head.size <= file.size) yield { head, body: file.slice(from, from + head.size) }
    at = head && from + head.size <= file.size ? from + head.size : await nextFront(file, at + 1)
  }
}

/** @param {Uint8Array} line @returns {Promise<Head | null>} */
async function headOf(line) {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(line)
    const end = text.lastIndexOf(' ')
    return (await digestOf(text.slice(0, end))) === text.slice(end + 1) ? JSON.parse(text.slice(0, end)) : null
  } catch {
    return null
  }
}

/** Where the next line may begin. @param {Blob} file @param {number} at @returns {Promise<number>} the file's end where there is none */
async function nextFront(file, at) {
  for (; at < file.size; at += WINDOW) {
    const bytes = new Uint8Array(await file.slice(at, at + WINDOW + FRONT.length).arrayBuffer())
    for (let n = bytes.indexOf(FRONT[0]); n >= 0; n = bytes.indexOf(FRONT[0], n + 1)) {
      if (FRONT.every((byte, k) => bytes[n + k] === byte)) return at + n
    }
  }
  return file.size
}
