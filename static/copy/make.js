// Make the copy: one file of all that is unsent, for the day when a phone cannot send. Nothing here needs signal, and
// nothing is taken off the phone. The file's bytes are handed to the browser piece by piece, so that the page never
// holds more than one photo.

import { encode } from '../entry/base64url.js'
import { moment } from '../entry/moment.js'
import { signJws } from '../entry/sign.js'
import { uuid7 } from '../entry/uuid7.js'
import { everyPerson } from '../people/current.js'
import { privateKey } from '../people/device.js'
import { build } from '../server/build.js'
import { Trouble } from '../words/trouble.js'
import { BLOCK, END, header, padding } from './tar.js'
import { pathOf, unsentThings } from './unsent.js'

/** @typedef {{file: File, entries: number, photos: number, lost: number, seals: number}} Copy `lost`: damaged here */

/**
 * @param {(photos: number) => void} [progress] after each photo @returns {Promise<Copy>}
 * @throws {Trouble} `copy.no_room`, `outbox.storage_stopped`
 */
export async function makeCopy(progress = () => {}) {
  const at = moment()
  const seconds = Date.now() / 1000
  /** @type {import('./unsent.js').Item[]} */
  const items = []
  /** @type {Blob[]} */
  const parts = []
  for await (const { item, bytes } of unsentThings()) {
    items.push(item)
    if (bytes) parts.push(member(pathOf(item), bytes, seconds))
    if (item.what === 'photo') progress(items.filter(({ what }) => what === 'photo').length)
  }
  const said = { v: 1, kind: 'copy', copy: uuid7(), at, build: await build(), items }
  const list = new TextEncoder().encode(JSON.stringify(said))
  const seals = await sealsOf(list, at, new Set(items.map(({ person }) => person)))
  const front = [member('manifest.json', list, seconds), ...seals.map(({ kid, token }) => member(`seals/${kid}`, new TextEncoder().encode(token), seconds))]
  const file = new File([...front, ...parts, END], `seamwalk-copy-${at.slice(0, 16).replace('T', '-').replace(':', '')}.tar`,
    { type: 'application/x-tar', lastModified: Date.now() })
  await checkReadable(file)
  const whole = (/** @type {string} */ what) => items.filter((item) => item.what === what && !item.damage).length
  return { file, entries: whole('entry'), photos: whole('photo'), lost: items.filter(({ damage }) => damage).length, seals: seals.length }
}

/** @param {string} path @param {Uint8Array<ArrayBuffer>} bytes @param {number} seconds */
function member(path, bytes, seconds) {
  return new Blob([header(path, bytes.length, seconds), bytes, padding(bytes.length)])
}

/**
 * The list sealed by every key on this phone whose person has work in it; by any other key where none of theirs is left.
 * @param {Uint8Array<ArrayBuffer>} list @param {string} at @param {Set<string>} authors
 */
async function sealsOf(list, at, authors) {
  const manifest = encode(new Uint8Array(await crypto.subtle.digest('SHA-256', list)))
  const seals = []
  for (const person of (await everyPerson()).sort((a, b) => Number(authors.has(b.id)) - Number(authors.has(a.id)))) {
    if (seals.length && !authors.has(person.id)) break
    const key = person.kid ? await privateKey(person.id, person.kid) : undefined
    if (!key || !person.kid) continue
    const { token } = await signJws({ v: 1, manifest, at, by: person.id }, 'seamwalk-copy', { kid: person.kid, privateKey: key })
    seals.push({ kid: person.kid, token })
  }
  return seals
}

/** A browser without room for the pieces breaks the file and says so only when it is read. @param {File} file */
async function checkReadable(file) {
  try {
    for (const from of [0, file.size - 2 * BLOCK]) {
      if (!(await file.slice(from, from + BLOCK).arrayBuffer()).byteLength) throw new RangeError('empty')
    }
  } catch (fault) {
    throw new Trouble('copy.no_room', { field: 'copy', value: String(fault) })
  }
}
