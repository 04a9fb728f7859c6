// The package as a bag (BagIt 1.0, RFC 8493): which files it has, and whether each is what its list says. The twin of
// inspect_app/evidence/package/bag.py.

import { fails, holds } from './fact.js'
import { BAGIT, INFO, NEEDED, PAYLOAD, TAGS, belongs, ofTheSystem } from './names.js'
import { textOf } from './package.js'

/** @typedef {import('./package.js').Files} Files */
/** SHA-256 of every file that could be read, in lower-case hexadecimal. @typedef {Map<string, string>} Hashes */
/** @typedef {{file: string, code: string}} Fault */

const DECLARATION = 'BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n'
const LINE = /^([0-9a-f]{64}) {2}([\x21-\x7e]{1,200})$/
// The first says most.
const CODES = ['strange', 'unlisted', 'missing', 'declaration', 'manifest', 'oxum', 'other_bytes']
const OXUM = /^Payload-Oxum: (\d{1,18})\.(\d{1,9})$/gm

/**
 * Hash every file: the largest share of the work. @param {Files} files @param {(bytes: number) => void} step
 * @returns {Promise<Hashes>}
 */
export async function hashesOf(files, step) {
  const hashes = new Map()
  for (const [name, file] of files) {
    try {
      const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', await file.arrayBuffer()))
      hashes.set(name, Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join(''))
    } catch { /* a file that the browser cannot read, or hold, has no hash, and so not the one that is listed */ }
    step(file.size)
  }
  return hashes
}

/** `bag_complete` and `bag_matches`. @param {Files} files @param {Hashes} hashes */
export async function bagFacts(files, hashes) {
  const ours = [...files.keys()].filter((name) => !ofTheSystem(name))
  /** @param {string} name @returns {Promise<string>} */
  const read = (name) => textOf(files, name, 'latin1').catch(() => '')
  /** @type {Fault[]} */
  const faults = ours.filter((name) => !belongs(name)).map((file) => ({ file, code: 'strange' }))
  if ((await read(BAGIT)) !== DECLARATION) faults.push({ file: BAGIT, code: 'declaration' })
  /** @type {Map<string, string>} */
  const listed = new Map()
  for (const manifest of [PAYLOAD, TAGS]) {
    const { lines, sound } = linesIn(await read(manifest), manifest)
    for (const [name, hash] of lines) listed.set(name, hash)
    if (!sound) faults.push({ file: manifest, code: 'manifest' })
  }
  for (const file of new Set([...NEEDED, ...listed.keys()])) if (!files.has(file)) faults.push({ file, code: 'missing' })
  for (const file of ours) if (!listed.has(file) && file !== TAGS) faults.push({ file, code: 'unlisted' })
  const payload = ours.filter((name) => name.startsWith('data/'))
  const bytes = payload.reduce((sum, name) => sum + (files.get(name)?.size ?? 0), 0)
  const oxum = [...(await read(INFO)).matchAll(OXUM)]
  if (oxum.length !== 1 || Number(oxum[0][1]) !== bytes || Number(oxum[0][2]) !== payload.length) faults.push({ file: INFO, code: 'oxum' })
  // What has no place in the layout is nobody's: it matches nothing, whatever is listed for it.
  const other = [...listed].filter(([name, hash]) => files.has(name) && !(belongs(name) && hashes.get(name) === hash)).map(([file]) => ({ file, code: 'other_bytes' }))
  return [
    told('bag_complete', faults, { count: ours.length, left_out: files.size - ours.length }),
    told('bag_matches', other, { count: listed.size }),
  ]
}

/** The lines of a list; of a name listed twice the first stands. @param {string} text @param {string} manifest */
function linesIn(text, manifest) {
  const rows = text.split('\n')
  let sound = rows.pop() === '' && text !== ''
  /** @type {Map<string, string>} */
  const lines = new Map()
  for (const row of rows) {
    const [, hash, name] = LINE.exec(row) ?? []
    const own = name !== undefined && (manifest === PAYLOAD) === name.startsWith('data/')
    if (!own || lines.has(name) || name === TAGS) sound = false
    else lines.set(name, hash)
  }
  return { lines, sound }
}

/** @param {string} name @param {Fault[]} faults @param {Record<string, any>} about */
function told(name, faults, about) {
  if (!faults.length) return holds(name, about)
  const rank = (/** @type {Fault} */ { code }) => CODES.indexOf(code)
  const [first] = faults.sort((a, b) => rank(a) - rank(b) || (a.file < b.file ? -1 : 1))
  return fails(name, first.code, { ...about, faults: faults.length, file: first.file })
}
