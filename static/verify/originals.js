// The photos and checklists of a package: whether each is the one it is named after, and whether any is wanting. The twin
// of inspect_app/evidence/package/photos.py and definitions.py.

import { encode, namesSha256 } from '../entry/base64url.js'
import { fails, holds, unknown } from './fact.js'
import { definitionIn, photoIn } from './names.js'

/** @typedef {import('./bag.js').Hashes} Hashes */
/** @typedef {import('./package.js').Files} Files */
/** @typedef {import('./tokens.js').Tokens} Tokens */
/** @typedef {import('./entry.js').Entry} Entry */

// The twin of inspect_app/entry/picture_type.py.
const FIRST = 32
const KINDS = /** @type {[RegExp, string][]} */ ([[/^\xff\xd8\xff/, 'jpg'], [/^\x89PNG\r\n\x1a\n/, 'png'], [/^RIFF[^]{4}WEBP/, 'webp'],
  [/^[^]{4}ftyp(?:hei[cxms]|hev[cxms]|mif1|msf1)/, 'heic']])

/** The ending that each photo ought to have, by its first bytes. @param {Files} files @returns {Promise<Map<string, string>>} */
export async function endingsOf(files) {
  const found = new Map()
  for (const [name, file] of files) {
    if (!photoIn(name)) continue
    try {
      const first = String.fromCharCode(...new Uint8Array(await file.slice(0, FIRST).arrayBuffer()))
      found.set(name, KINDS.find(([begins]) => begins.test(first))?.[1] ?? 'bin')
    } catch { /* one that cannot be read has no hash either, and is told by that */ }
  }
  return found
}

/** `photos_match` and `photos_complete`. @param {Files} files @param {Hashes} hashes @param {Tokens} tokens @param {Map<string, string>} endings */
export function photoFacts(files, hashes, { entries, read }, endings) {
  // Of receipts that do not hold too: they are told of as faults elsewhere, and a photo is wanted all the more.
  const received = new Map(read.flatMap((one) => (one?.payload.photo ? [[one.payload.photo, one.payload.size]] : [])))
  const here = [...files].flatMap(([file, { size }]) => {
    const named = photoIn(file)
    return named ? [{ file, named, size, sound: hashes.get(file) === named }] : []
  })
  const other = here.filter(({ sound, named, size }) => !sound || (received.get(named) ?? size) !== size).map(({ file }) => file)
  const stray = here.filter(({ named }) => !received.has(named)).map(({ file }) => file)
  const misnamed = here.filter(({ file }) => endings.has(file) && !file.endsWith(`.${endings.get(file)}`)).map(({ file }) => file)
  const named = new Set(entries.flatMap(picturesOf))
  const sound = new Set(here.filter((one) => one.sound).map((one) => one.named))
  const lost = [...received.keys()].filter((one) => !sound.has(one))
  const never = [...named].filter((one) => !received.has(one) && !sound.has(one))
  const about = { count: new Set([...named, ...received.keys()]).size, lost: lost.length, never: never.length }
  return [
    other.length ? fails('photos_match', 'other_bytes', naming(other, here.length))
      : stray.length ? fails('photos_match', 'not_received', naming(stray, here.length))
        : misnamed.length ? fails('photos_match', 'other_ending', naming(misnamed, here.length)) : holds('photos_match', { count: here.length }),
    lost.length ? fails('photos_complete', 'photo_lost', { ...about, ...naming(lost, about.count) })
      : never.length ? unknown('photos_complete', 'never_arrived', { ...about, ...naming(never, about.count) }) : holds('photos_complete', about),
  ]
}

/** `definitions_match`. @param {Hashes} hashes @param {Entry[]} entries @param {Files} files */
export function definitionsFact(files, hashes, entries) {
  const here = new Map([...files.keys()].flatMap((file) => {
    const digest = definitionIn(file)
    return digest ? [[digest, file]] : []
  }))
  const other = [...here].filter(([digest, file]) => digestIn(hashes.get(file)) !== digest).map(([, file]) => file)
  const missing = [...new Set(entries.flatMap(definitionsOf))].filter((digest) => !here.has(digest))
  if (other.length) return fails('definitions_match', 'other_bytes', naming(other, here.size))
  if (missing.length) return fails('definitions_match', 'definition_missing', naming(missing, here.size))
  return holds('definitions_match', { count: here.size })
}

/** @param {string[]} faults @param {number} count */
const naming = (faults, count) => ({ count, faults: faults.length, file: [...faults].sort()[0] })

/** A digest in base64url of a hash in hexadecimal. @param {string} [hash] */
const digestIn = (hash) => hash && encode(Uint8Array.from(hash.match(/../g) ?? [], (byte) => parseInt(byte, 16)))

/** @param {Entry} entry @returns {string[]} */
function definitionsOf({ kind, payload: { body } }) {
  const { definition, definitions } = body
  const pinned = kind === 'job' && definitions !== null && typeof definitions === 'object' && !Array.isArray(definitions)
  return [definition, ...(pinned ? Object.values(definitions) : [])].filter((one) => typeof one === 'string' && namesSha256(one))
}

/** SHA-256 of every photo that an entry's body names, however deep: the twin of inspect_app/entry/pictures.py. @param {Entry} entry */
export function picturesOf({ payload }) {
  /** @type {string[]} */
  const found = []
  const waiting = [payload.body]
  while (waiting.length) {
    const value = waiting.pop()
    if (value === null || typeof value !== 'object') continue
    if (!Array.isArray(value)) found.push(value.sha256, value.document, ...(Array.isArray(value.photos) ? value.photos : []))
    waiting.push(...Object.values(value))
  }
  return found.filter((one) => typeof one === 'string' && one.length === 64)
}
