// The files of the spare copy: each page that keeps something has its own, named by what it holds, of which database it
// is the copy, and the page.

/** @typedef {'text' | 'photos'} Kind a photo's copy goes when room is short, a record's never */

const page = `${Date.now().toString(36)}${Math.random().toString(36).slice(2, 8)}`

/** @param {Kind} kind @param {string} store */
export const nameOf = (kind, store) => `${kind}.${store}.${page}`

/** @param {string} name of a file @returns {{kind: string, store: string, own: boolean}} */
export function told(name) {
  const [kind, store, of] = name.split('.')
  return { kind, store, own: of === page }
}

/** @returns {Promise<string[]>} names of all files of the spare copy */
export async function names() {
  const folder = await place()
  const found = []
  if (folder) for await (const name of /** @type {any} */ (folder).keys()) found.push(name)
  return found
}

/** @param {string} name @returns {Promise<Blob>} */
export async function read(name) {
  return (await (/** @type {any} */ (await place())).getFileHandle(name)).getFile()
}

/** @param {string} name @returns {Promise<boolean>} false where a window that lives writes to it */
export async function remove(name) {
  return (/** @type {any} */ (await place())).removeEntry(name).then(() => true, () => false)
}

/** @returns {Promise<FileSystemDirectoryHandle | null>} null where there is none */
async function place() {
  try {
    return await (await navigator.storage.getDirectory()).getDirectoryHandle('spare')
  } catch {
    return null
  }
}
