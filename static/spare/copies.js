// The second copy of what is only on this phone, in the browser's store of responses, beside its database: a browser that
// takes its database for damaged throws all of it away, and makes no difference between what was sent and what was not.
//
// It never stands in the way: what cannot be written here is saved all the same. Photos are kept twice only where the
// browser has promised lasting storage: any other takes all of it away for want of room, which they would bring nearer.

const NAME = 'seamwalk-spare' // kept by static/sw.js
const LIMIT = 5000 // ms that what is saved already waits for its second copy
const LATE = 60_000 // ms that one which did not answer is left alone

/** `what` a thing is: a photo's copy goes when room is short, a record's never.
 * @typedef {{what: 'entry' | 'photo', person: string, name: string, [more: string]: any}} Head */
/** `store`: of which database it is the copy. @typedef {{url: string, store: string, what: string, person: string, name: string}} Copy */

let late = -Infinity // until when
let photos = true

/**
 * @param {string} store the database's name for itself @param {Head} head @param {Uint8Array<ArrayBuffer>} bytes
 * @returns {Promise<boolean>} whether it is kept twice
 */
export async function keepCopy(store, head, bytes) {
  if (!(await mayCopy(head.what))) return false
  const said = await within(put(store, head, bytes).catch((fault) => fault), 'late')
  if (said === 'late') late = performance.now() + LATE
  if (said !== true && head.what === 'photo') photos = false // no room: what each of the others would try as well
  return said === true
}

/** Is it worth reading a thing for its second copy? @param {string} what @returns {Promise<boolean>} */
export async function mayCopy(what) {
  if (!globalThis.caches || performance.now() < late) return false
  return what !== 'photo' || (photos && (await isPromised()))
}

/** @param {string} store @param {Head} head @param {Uint8Array<ArrayBuffer>} bytes */
async function put(store, head, bytes) {
  const url = `/spare/${[store, head.what, head.person, head.name].map(encodeURIComponent).join('/')}`
  const headers = { 'X-Head': encodeURIComponent(JSON.stringify(head)) }
  await (await caches.open(NAME)).put(url, new Response(bytes, { headers }))
  return true
}

/** @returns {Promise<Copy[]>} */
export async function copies() {
  if (!globalThis.caches) return []
  return (await (await caches.open(NAME)).keys()).map(({ url }) => {
    const [store, what, person, name] = new URL(url).pathname.split('/').slice(2).map(decodeURIComponent)
    return { url, store, what, person, name }
  })
}

/** @param {Copy} copy @returns {Promise<{head: Head, body: Response} | null>} null where it is gone */
export async function readCopy({ url }) {
  const body = await (await caches.open(NAME)).match(url)
  return body ? { head: JSON.parse(decodeURIComponent(body.headers.get('X-Head') ?? '')), body } : null
}

/** @param {Copy[]} gone */
export async function dropCopies(gone) {
  const store = gone.length ? await caches.open(NAME) : null
  for (const { url } of gone) await store?.delete(url)
}

/** Give the room of all second copies of photos back; no more are made by this page. What another database has left is no
 * second copy: it is all there is. @param {string} store */
export async function givePhotos(store) {
  photos = false
  await within(copies().then((all) => dropCopies(all.filter((one) => one.what === 'photo' && one.store === store))), null)
}

async function isPromised() {
  return (await within(navigator.storage?.persisted?.(), false)) === true
}

/** @template T @template U @param {Promise<T> | undefined} work @param {U} otherwise @returns {Promise<T | U | undefined>} */
function within(work, otherwise) {
  return Promise.race([work, new Promise((resolve) => { setTimeout(() => resolve(otherwise), LIMIT) })])
}
