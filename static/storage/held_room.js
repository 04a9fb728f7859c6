// Room on the disk, held by a file of the browser's own: to cut it short needs no room, and writes nothing to the database.

const GIVE_LIMIT = 10_000 // ms
const HOLD_LIMIT = 60_000 // a slow disk takes its time over so much
const STEADY_LIMIT = 2000 // a write waits no longer for more to be taken

/**
 * `held`: another window is at the file just now; `none`: there is no such file here.
 * @typedef {'done' | 'full' | 'held' | 'none'} Said
 */

/** @type {Promise<Said> | null} */
let giving = null
/** The last time that more was taken. @type {Promise<unknown>} */
let taking = Promise.resolve()
/** Those that make the file longer just now. @type {Set<(said: Said) => void>} */
const growing = new Set()

/** @type {(held: boolean) => void} */
let heard = () => {}

/** @param {(held: boolean) => void} hear whether the ballast's room is held, whenever that changes */
export function onRoom(hear) {
  heard = hear
}

/** Make the file so long, once what is being given back is. @param {number} size @returns {Promise<Said>} */
export async function holdRoom(size) {
  if (giving) await giving // else it begins here and now, where giving meets it
  const said = asked(size)
  taking = Promise.race([said, new Promise((resolve) => { setTimeout(resolve, STEADY_LIMIT) })])
  said.then((one) => one === 'done' && heard(true))
  return said
}

/** Give all of it back, also what is just being taken. @returns {Promise<Said>} */
export function giveRoom() {
  heard(false)
  for (const end of growing) end('full') // it has the file, and a full disk waits for no other
  giving ??= asked(0).finally(() => { giving = null })
  return giving
}

/** Is so much free? It is taken, and given back at once. @param {number} size @returns {Promise<Said>} */
export function tryRoom(size) {
  return asked(size, 'try')
}

/** Once what is being given back is there, and no more is taken: that fills a disk to the brim for a moment, in which a
 * write would be torn. */
export async function roomGiven() {
  await giving
  await taking
}

/** @param {number} size @param {'hold' | 'try'} [why] @returns {Promise<Said>} never rejected */
function asked(size, why = 'hold') {
  if (typeof Worker === 'undefined' || !globalThis.navigator?.storage?.getDirectory) return Promise.resolve('none')
  return new Promise((/** @type {(said: Said) => void} */ resolve) => {
    const worker = new Worker(new URL('./ballast_file.js', import.meta.url), { type: 'module' })
    const end = (/** @type {Said} */ said) => {
      clearTimeout(timer)
      growing.delete(end)
      worker.terminate()
      resolve(said)
    }
    const timer = setTimeout(() => end('none'), size && why === 'hold' ? HOLD_LIMIT : GIVE_LIMIT)
    if (size && why === 'hold') growing.add(end)
    worker.onmessage = ({ data }) => end(data)
    worker.onerror = () => end('none')
    worker.postMessage({ size, why })
  }).catch(() => 'none')
}
