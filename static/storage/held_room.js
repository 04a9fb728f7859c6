// Room on the disk, held by a file of the browser's own: to cut it short needs no room, and writes nothing to the database.

const FILE_LIMIT = 10_000 // ms

/** @type {Promise<unknown> | null} */
let giving = null

/** Make the file so long. @param {number} size @returns {Promise<'done' | 'full' | 'none'>} none: no such file here */
export function holdRoom(size) {
  if (typeof Worker === 'undefined' || !globalThis.navigator?.storage?.getDirectory) return Promise.resolve('none')
  return new Promise((resolve) => {
    const worker = new Worker(new URL('./ballast_file.js', import.meta.url), { type: 'module' })
    const end = (/** @type {'done' | 'full' | 'none'} */ said) => {
      clearTimeout(timer)
      worker.terminate()
      resolve(said)
    }
    const timer = setTimeout(() => end('none'), FILE_LIMIT)
    worker.onmessage = ({ data }) => end(data)
    worker.onerror = () => end('none')
    worker.postMessage(size)
  })
}

/** Give all of it back. @returns {Promise<unknown>} */
export function giveRoom() {
  giving ??= holdRoom(0).finally(() => { giving = null })
  return giving
}

/** Once what is being given back is there. */
export async function roomGiven() {
  await giving
}
