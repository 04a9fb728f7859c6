// The files of an evidence package by their names in it, whichever way they were given.

import { Unreadable } from './unreadable.js'
import { filesInZip } from './zip.js'

/** @typedef {Map<string, Blob>} Files */

const LARGEST_TEXT = 256 * 1024 * 1024

/** Of a zip. Throws Unreadable. @param {Blob} file @returns {Promise<Files>} */
export async function packageInZip(file) {
  const all = await filesInZip(file)
  const files = within(all)
  const looked = new Set(files.values())
  // What lies beside the package would be unpacked with it, and nothing here would have looked at it.
  for (const [name, one] of all) if (!looked.has(one)) throw new Unreadable('path', { name })
  return files
}

/** Of a folder as a browser lists it. Throws Unreadable. @param {Iterable<File>} list @returns {Files} */
export function packageInFolder(list) {
  return within(new Map([...list].map((file) => [file.webkitRelativePath || file.name, file])))
}

/** The names below the folder that holds the package. @param {Files} files @returns {Files} */
function within(files) {
  for (const name of files.keys()) if (leadsOut(name)) throw new Unreadable('path', { name })
  const [nearest] = [...files.keys()].filter((name) => name === 'bagit.txt' || name.endsWith('/bagit.txt')).sort((a, b) => a.length - b.length)
  if (nearest === undefined) throw new Unreadable('no_package')
  const folder = nearest.slice(0, -'bagit.txt'.length)
  return new Map([...files].filter(([name]) => name.startsWith(folder)).map(([name, file]) => [name.slice(folder.length), file]))
}

/** @param {string} name */
const leadsOut = (name) => /[\\\0]|^\/|^[A-Za-z]:/.test(name) || name.split('/').some((part) => part === '..' || part === '.' || part === '')

/** A file's text, byte for byte as letters of Latin-1, or UTF-8. Throws Unreadable. @param {Files} files @param {string} name @param {'latin1' | 'utf-8'} [encoding] */
export async function textOf(files, name, encoding = 'utf-8') {
  const file = files.get(name)
  if (!file) throw new Unreadable('missing_file', { name })
  if (file.size > LARGEST_TEXT) throw new Unreadable('too_large', { name })
  try {
    const bytes = await file.arrayBuffer()
    return new TextDecoder(encoding, { fatal: true, ignoreBOM: true }).decode(bytes)
  } catch {
    throw new Unreadable('unreadable_file', { name })
  }
}

/** An object in a file of JSON. Throws Unreadable. @param {Files} files @param {string} name @returns {Promise<Record<string, any>>} */
export async function objectIn(files, name) {
  const text = await textOf(files, name)
  try {
    const value = JSON.parse(text)
    if (value !== null && typeof value === 'object' && !Array.isArray(value)) return value
  } catch { /* said below */ }
  throw new Unreadable('unreadable_file', { name })
}
