// Room on the disk, held in the browser's store of responses: to give it back needs no room, and writes nothing to the
// database. (Files of the origin's own would do it too. But Chromium forgets what they take when it is killed, and counts
// 4 GiB for the origin once one is cut short: decision 79.)

const HELD = 'seamwalk-room' // kept by static/sw.js
const TRIED = 'seamwalk-room-tried'
const PIECE = 1024 * 1024
const LIMIT = 60_000 // ms; a slow disk takes its time
const STEADY_LIMIT = 2000 // a write waits no longer for more to be taken

/** `none`: there is no such store here. @typedef {'done' | 'full' | 'none'} Said */

/** @type {Promise<Said> | null} */
let giving = null
/** The last time that more was taken. @type {Promise<unknown>} */
let taking = Promise.resolve()
let asked = 0
let swept = false
/** @type {(held: boolean) => void} */
let heard = () => {}

/** @param {(held: boolean) => void} hear whether the ballast's room is held, whenever that changes */
export function onRoom(hear) {
  heard = hear
}

/** Is so much held? What a page before this one held counts. @param {number} size */
export async function roomHeld(size) {
  return !giving && Boolean(globalThis.caches) && (await (await caches.open(HELD)).keys()).length * PIECE >= size
}

/** Hold so much, once what is being given back is. @param {number} size @returns {Promise<Said>} */
export async function holdRoom(size) {
  const mine = ++asked
  if (giving) await giving // else it begins here and now, where giving meets it
  const said = limited(filled(size, () => mine === asked))
  taking = within(said, STEADY_LIMIT, /** @type {Said} */ ('full'))
  if ((await said) === 'done') heard(true)
  return said
}

/** Give all of it back, also what is just being taken. @returns {Promise<Said>} */
export function giveRoom() {
  asked += 1
  heard(false)
  giving ??= limited(taking.then(() => emptied(HELD))).finally(() => { giving = null })
  return giving
}

/** Is so much free? It is taken, and given back at once. @param {number} size @returns {Promise<Said>} */
export async function tryRoom(size) {
  if (!swept) await limited(leftEmptied())
  swept = true
  const name = `${TRIED}-${Date.now()}-${Math.random()}`
  const said = await limited(fits(name, size))
  await limited(emptied(name))
  return said
}

/** All pieces at once and all the same: a start waits for this. @param {string} name @param {number} size @returns {Promise<Said>} */
async function fits(name, size) {
  if (!globalThis.caches) return 'none'
  const store = await caches.open(name)
  const piece = random()
  const puts = Array.from({ length: Math.ceil(size / PIECE) }, (_, n) => store.put(`/room/${n}`, new Response(piece)))
  return (await Promise.allSettled(puts)).every(({ status }) => status === 'fulfilled') ? 'done' : 'full'
}

/** What a page that was ended in the middle of a look has left. @returns {Promise<Said>} */
async function leftEmptied() {
  if (!globalThis.caches) return 'none'
  const old = (await caches.keys()).filter((name) => name.startsWith(TRIED) && !(Math.abs(Date.now() - Number(name.split('-')[3])) < LIMIT))
  await Promise.all(old.map(emptied))
  return 'done'
}

/** Once what is being given back is there, and no more is taken: that fills a disk to the brim for a moment, in which a
 * write would be torn. */
export async function roomGiven() {
  await giving
  await taking
}

/**
 * What is there already is not written again; where not all of it fits, half stays: a disk filled to the brim by us would
 * help nobody.
 * @param {number} size @param {() => boolean} wanted still @returns {Promise<Said>}
 */
async function filled(size, wanted) {
  if (!globalThis.caches) return 'none'
  const store = await caches.open(HELD)
  const there = new Set((await store.keys()).map(({ url }) => new URL(url).pathname))
  for (let n = 0; n * PIECE < size; n += 1) {
    if (!wanted()) return 'full'
    if (there.has(`/room/${n}`)) continue
    const fault = await store.put(`/room/${n}`, new Response(random())).then(() => null, (reason) => reason ?? 'refused')
    if (!fault) continue
    for (let last = n; last >= Math.floor(n / 2); last -= 1) await store.delete(`/room/${last}`)
    return 'full'
  }
  return wanted() ? 'done' : 'full'
}

/** Piece by piece: a store that is deleted keeps its bytes as long as anybody holds it. @param {string} name @returns {Promise<Said>} */
async function emptied(name) {
  if (!globalThis.caches) return 'none'
  const store = await caches.open(name)
  await Promise.all((await store.keys()).map(({ url }) => store.delete(new URL(url).pathname)))
  await caches.delete(name)
  return 'done'
}

/** Random, because what lies under it may compress. */
function random() {
  const piece = new Uint8Array(PIECE)
  for (let at = 0; at < PIECE; at += 65_536) crypto.getRandomValues(piece.subarray(at, at + 65_536))
  return piece
}

/** @param {Promise<Said>} work @returns {Promise<Said>} never rejected */
function limited(work) {
  return within(work.catch(() => /** @type {Said} */ ('none')), LIMIT, /** @type {Said} */ ('none'))
}

/** @template T @param {Promise<T>} work @param {number} ms @param {T} otherwise @returns {Promise<T>} */
function within(work, ms, otherwise) {
  return new Promise((resolve) => {
    const timer = setTimeout(() => resolve(otherwise), ms)
    work.then(resolve).finally(() => clearTimeout(timer))
  })
}
