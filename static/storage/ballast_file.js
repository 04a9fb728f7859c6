// Keeps the ballast's file: only a worker may cut one short in its place.

const BLOCK = 65_536

/** @param {number} size @returns {Promise<'done' | 'full'>} */
async function make(size) {
  const folder = await navigator.storage.getDirectory()
  const place = await folder.getFileHandle('ballast', { create: true })
  const file = await /** @type {any} */ (place).createSyncAccessHandle()
  try {
    return size ? grow(file, size) : (file.truncate(0), 'done')
  } finally {
    file.close()
  }
}

/** @param {any} file @param {number} size @returns {'done' | 'full'} */
function grow(file, size) {
  const block = crypto.getRandomValues(new Uint8Array(BLOCK))
  for (let at = file.getSize(); at < size; at += BLOCK) {
    if (written(file, block, at)) continue
    file.truncate(Math.floor(at / 2)) // what is left is shared: a disk filled to the brim by us would help nobody
    return 'full'
  }
  file.flush()
  return 'done'
}

/** @param {any} file @param {Uint8Array} block @param {number} at */
function written(file, block, at) {
  try {
    return file.write(block, { at }) === block.length
  } catch {
    return false
  }
}

self.onmessage = async ({ data: size }) => {
  self.postMessage(await make(size).catch(() => 'none'))
}
