// Keeps the ballast's file: only a worker may cut one short in its place.
//
// Browsers of before 2023 give promises where the File System Standard now has values: all but `write` is awaited.

const BLOCK = 65_536
const HELD = new Set(['NoModificationAllowedError', 'InvalidStateError']) // the standard's name for a file in use, and another in use
const TRIES = 50
const AGAIN = 100 // ms

/** @param {number} size @param {'hold' | 'try'} why @returns {Promise<'done' | 'full' | 'held'>} */
async function make(size, why) {
  const folder = await navigator.storage.getDirectory()
  const file = await opened(await folder.getFileHandle('ballast', { create: true }))
  if (!file) return 'held'
  try {
    if (why === 'try') return await fits(file, size)
    if (size) return await grow(file, size)
    await file.truncate(0)
    return 'done'
  } catch {
    return 'full' // it can be opened: what fails now is the disk
  } finally {
    await file.close()
  }
}

/** Where another window has it open, or one that is just ending: a moment later. @param {any} place */
async function opened(place) {
  for (let tries = 0; tries < TRIES; tries += 1) {
    try {
      return await place.createSyncAccessHandle()
    } catch (fault) {
      if (!HELD.has(/** @type {any} */ (fault).name)) throw fault
    }
    await new Promise((resolve) => setTimeout(resolve, AGAIN))
  }
  return null
}

/** @param {any} file @param {number} size @returns {Promise<'done' | 'full'>} */
async function grow(file, size) {
  const block = crypto.getRandomValues(new Uint8Array(BLOCK))
  for (let at = await file.getSize(); at < size; at += BLOCK) {
    if (written(file, block, at)) continue
    await file.truncate(Math.floor(at / 2)) // what is left is shared: a disk filled to the brim by us would help nobody
    return 'full'
  }
  await file.flush()
  return 'done'
}

/** Behind what is held: a disk that is full makes no other file. It gives room as it is written to; that what was written
 * reaches the disk is not waited for. @param {any} file @param {number} more @returns {Promise<'done' | 'full'>} */
async function fits(file, more) {
  const block = new Uint8Array(BLOCK).fill(1)
  const held = await file.getSize()
  let at = held
  while (at < held + more && written(file, block, at)) at += BLOCK
  await file.truncate(held)
  return at < held + more ? 'full' : 'done'
}

/** @param {any} file @param {Uint8Array} block @param {number} at */
function written(file, block, at) {
  try {
    return file.write(block, { at }) === block.length
  } catch {
    return false
  }
}

self.onmessage = async ({ data: { size, why } }) => {
  self.postMessage(await make(size, why).catch((fault) => (fault.name === 'QuotaExceededError' ? 'full' : 'none')))
}
