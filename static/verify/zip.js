// A zip that holds its files as they are (PKWARE APPNOTE 6.3.10, method 0 "stored", Zip64): read by its list at the end,
// without unpacking anything. Whatever is packed, encrypted, doubled, linked or leads out of its folder is refused.

import { Unreadable } from './unreadable.js'

/** @typedef {{name: string, size: number, at: number}} Member */

const [END, END64, PLACE64, LISTED, LOCAL] = [0x06054b50, 0x06064b50, 0x07064b50, 0x02014b50, 0x04034b50]
const [MOST16, MOST32] = [0xffff, 0xffffffff]
const LARGEST_LIST = 64 * 1024 * 1024
const LATE = 24 // bytes of a checksum that follows its member
const LINK = 0o120000

/** Its files by name. Throws Unreadable. @param {Blob} file @returns {Promise<Map<string, Blob>>} */
export async function filesInZip(file) {
  const { at, size, count } = await listOf(file)
  if (at + size > file.size || size > LARGEST_LIST) throw new Unreadable('zip_damaged')
  const members = listed(await viewOf(file, at, size), count)
  const files = new Map()
  let from = 0
  for (const one of members) {
    // One after the other from the first byte, with nothing between but a late checksum: else two readers could see two
    // different archives.
    const start = await startOf(file, one)
    if (one.at < from || one.at > from + (from && LATE) || start + one.size > at) throw new Unreadable('zip_damaged', { name: one.name })
    from = start + one.size
    if (files.has(one.name)) throw new Unreadable('zip_twice', { name: one.name })
    if (!one.name.endsWith('/')) files.set(one.name, file.slice(start, from))
  }
  return files
}

/** Where the list stands. @param {Blob} file */
async function listOf(file) {
  const from = Math.max(0, file.size - 22 - MOST16)
  const tail = await viewOf(file, from, file.size - from)
  for (let at = tail.byteLength - 22; at >= 0; at -= 1) {
    if (tail.getUint32(at, true) !== END || at + 22 + tail.getUint16(at + 20, true) !== tail.byteLength) continue
    const found = { count: tail.getUint16(at + 10, true), size: tail.getUint32(at + 12, true), at: tail.getUint32(at + 16, true) }
    const large = found.count === MOST16 || found.size === MOST32 || found.at === MOST32
    return large ? listOf64(file, from + at - 20) : found
  }
  throw new Unreadable('not_a_zip')
}

/** @param {Blob} file @param {number} at of the record that tells where the large list's end stands */
async function listOf64(file, at) {
  const place = await viewOf(file, at, 20)
  if (place.getUint32(0, true) !== PLACE64) throw new Unreadable('zip_damaged')
  const end = await viewOf(file, large(place, 8), 56)
  if (end.getUint32(0, true) !== END64) throw new Unreadable('zip_damaged')
  return { count: large(end, 32), size: large(end, 40), at: large(end, 48) }
}

/** @param {DataView} list @param {number} count @returns {Member[]} */
function listed(list, count) {
  const members = []
  let at = 0
  while (at < list.byteLength) {
    if (at + 46 > list.byteLength || list.getUint32(at, true) !== LISTED) throw new Unreadable('zip_damaged')
    const lengths = [28, 30, 32].map((one) => list.getUint16(at + one, true))
    const end = at + 46 + lengths[0] + lengths[1] + lengths[2]
    if (end > list.byteLength) throw new Unreadable('zip_damaged')
    const name = nameIn(list, at + 46, lengths[0])
    if (list.getUint16(at + 8, true) & 1 || list.getUint16(at + 10, true) !== 0) throw new Unreadable('zip_packed', { name })
    if (((list.getUint32(at + 38, true) >>> 16) & 0o170000) === LINK) throw new Unreadable('zip_link', { name })
    const [size, packed, place] = sizes(list, at, at + 46 + lengths[0], lengths[1])
    if (size !== packed) throw new Unreadable('zip_damaged', { name })
    members.push({ name, size, at: place })
    at = end
  }
  if (members.length !== count) throw new Unreadable('zip_damaged')
  return members
}

/** Size, packed size and place of a member, from the Zip64 field where the short ones do not hold them.
 * @param {DataView} list @param {number} at @param {number} extra @param {number} length */
function sizes(list, at, extra, length) {
  const found = [24, 20, 42].map((one) => list.getUint32(at + one, true))
  for (let field = extra; found.includes(MOST32) && field + 4 <= extra + length;) {
    const [id, long] = [list.getUint16(field, true), list.getUint16(field + 2, true)]
    if (id === 1) {
      let next = field + 4
      for (const [which, value] of found.entries()) {
        if (value !== MOST32) continue
        if (next + 8 > field + 4 + long || next + 8 > extra + length) throw new Unreadable('zip_damaged')
        found[which] = large(list, next)
        next += 8
      }
    }
    field += 4 + long
  }
  return found
}

/** Where a member's bytes begin: behind its own header, which must bear the same name. @param {Blob} file @param {Member} member */
async function startOf(file, { name, at }) {
  const header = await viewOf(file, at, 30)
  const [named, extra] = [header.getUint16(26, true), header.getUint16(28, true)]
  if (header.getUint32(0, true) !== LOCAL || nameIn(await viewOf(file, at + 30, named), 0, named) !== name) {
    throw new Unreadable('zip_damaged', { name })
  }
  return at + 30 + named + extra
}

/** @param {DataView} view @param {number} at @param {number} length */
function nameIn(view, at, length) {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(new Uint8Array(view.buffer, view.byteOffset + at, length))
  } catch {
    throw new Unreadable('zip_damaged')
  }
}

/** A number of eight bytes. @param {DataView} view @param {number} at */
function large(view, at) {
  const value = view.getBigUint64(at, true)
  if (value > BigInt(Number.MAX_SAFE_INTEGER)) throw new Unreadable('zip_damaged')
  return Number(value)
}

/** @param {Blob} file @param {number} at @param {number} size */
async function viewOf(file, at, size) {
  if (at < 0 || at + size > file.size) throw new Unreadable('zip_damaged')
  return new DataView(await file.slice(at, at + size).arrayBuffer())
}
