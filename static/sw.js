// The worker: keeps a complete, checked copy of the app on the phone, and answers from it without a network.
//
// The server puts one line before this text, `const BUILD = "…"`, the digest of the shell's list; so a new build
// is a new worker. Members are kept under their digest: a new build fetches only what it lacks, a cut install
// goes on where it stopped, and the old build stays whole until the new one has taken over.
/* global BUILD */

/** @typedef {{url: string, sha256: string, size: number}} Member */
/** @typedef {{build: string, files: Member[]}} List */
/** @typedef {{request: Request, url: URL}} Asked */

const here = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self))

const MEMBERS = 'seamwalk-members' // /member/SHA256 -> a file
const LISTS = 'seamwalk-lists' //     /list/BUILD -> the list of a build that is whole
const WAVE = 6 // files fetched at once

/**
 * How requests are answered: the first rule that matches, top to bottom.
 * @type {{name: string, when: (asked: Asked) => boolean, answer: null | ((asked: Asked) => Promise<Response>)}[]}
 */
const RULES = [
  { name: 'changes go to the server', when: ({ request }) => request.method !== 'GET', answer: null },
  { name: 'other places are not ours', when: ({ url }) => url.origin !== location.origin, answer: null },
  { name: 'data is never cached', when: ({ url }) => /^\/(api|photos)\//.test(url.pathname), answer: null },
  { name: 'the running build is the list it answers from', when: ({ url }) => url.pathname === '/shell.json', answer: ownList },
  { name: 'every page is the app', when: ({ request }) => request.mode === 'navigate', answer: () => member('/') },
  { name: 'members come from the phone', when: ({ url }) => memberUrls?.has(url.pathname) ?? true,
    answer: ({ url, request }) => member(url.pathname, request) },
]

/** @type {List | null} */
let list = null
/** @type {Map<string, string> | null} */
let memberUrls = null

here.addEventListener('install', (event) => event.waitUntil(install()))
here.addEventListener('activate', (event) => event.waitUntil(activate()))
here.addEventListener('message', (event) => event.waitUntil(hear(event)))
here.addEventListener('fetch', (event) => {
  const asked = { request: event.request, url: new URL(event.request.url) }
  const rule = RULES.find(({ when }) => when(asked))
  if (rule?.answer) event.respondWith(rule.answer(asked))
})

/** All members, each checked; only then the list. A failure leaves what is there for the next try. */
async function install() {
  const reply = await fetch('/shell.json', { cache: 'no-store' })
  const found = /** @type {List} */ (await reply.json())
  if (found.build !== BUILD) throw new Error('the list is of another build; the browser will come again')
  const members = await caches.open(MEMBERS)
  const missing = /** @type {Member[]} */ ([])
  for (const file of found.files) {
    if (!(await members.match(`/member/${file.sha256}`))) missing.push(file)
  }
  await Promise.all(Array.from({ length: WAVE }, async () => {
    for (let file = missing.shift(); file; file = missing.shift()) await bring(members, file)
  }))
  await (await caches.open(LISTS)).put(`/list/${BUILD}`, new Response(JSON.stringify(found)))
}

/** @param {Cache} members @param {{url: string, sha256: string}} file */
async function bring(members, { url, sha256 }) {
  const reply = await fetch(url, { cache: 'no-cache' })
  const bytes = await reply.arrayBuffer()
  if (!reply.ok || (await hex(bytes)) !== sha256) throw new Error(`not the file that is listed: ${url}`)
  const headers = new Headers(reply.headers)
  headers.delete('Content-Encoding') // the bytes kept are the plain ones
  headers.delete('Content-Length')
  await members.put(`/member/${sha256}`, new Response(bytes, { headers }))
}

/** Only now is the former build given up. */
async function activate() {
  await here.clients.claim()
  const { files } = await ownFiles()
  const wanted = new Set(files.map(({ sha256 }) => `/member/${sha256}`))
  const members = await caches.open(MEMBERS)
  for (const request of await members.keys()) {
    if (!wanted.has(new URL(request.url).pathname)) await members.delete(request)
  }
  const lists = await caches.open(LISTS)
  for (const request of await lists.keys()) {
    if (new URL(request.url).pathname !== `/list/${BUILD}`) await lists.delete(request)
  }
}

/** @returns {Promise<List>} */
async function ownFiles() {
  if (!list) {
    const kept = await (await caches.open(LISTS)).match(`/list/${BUILD}`)
    if (!kept) return { build: BUILD, files: [] }
    const found = /** @type {List} */ (await kept.json())
    list = found
    memberUrls = new Map(found.files.map(({ url, sha256 }) => [url, sha256]))
  }
  return list
}

async function ownList() {
  const { build, files } = await ownFiles()
  return files.length ? Response.json({ build, files }) : fetch('/shell.json', { cache: 'no-store' })
}

/** @param {string} url @param {Request} [request] @param {boolean} [noNetwork] */
async function member(url, request, noNetwork = false) {
  await ownFiles()
  const sha256 = memberUrls?.get(url)
  const kept = sha256 && (await (await caches.open(MEMBERS)).match(`/member/${sha256}`))
  if (kept) return kept
  return noNetwork ? Response.error() : fetch(request ?? url)
}

/** @param {ExtendableMessageEvent} event */
async function hear(event) {
  /** @type {Record<string, () => any>} */
  const answers = { prove, 'take over': () => here.skipWaiting() }
  const answer = answers[event.data?.ask]
  if (answer) event.ports[0]?.postMessage(await answer())
}

/** Recount and re-hash every member from the phone, and answer for the app's page with no use of the network. */
async function prove() {
  const { files } = await ownFiles()
  const missing = /** @type {string[]} */ ([])
  for (const { url, sha256, size } of files) {
    const kept = await member(url, undefined, true)
    const bytes = kept.type === 'error' ? new ArrayBuffer(0) : await kept.arrayBuffer()
    if (bytes.byteLength !== size || (await hex(bytes)) !== sha256) missing.push(url)
  }
  if (missing.length) await repair(files.filter(({ url }) => missing.includes(url)))
  const page = await member('/', undefined, true)
  return { build: BUILD, total: files.length, missing, page: page.ok && (await page.text()).includes('<') }
}

/** What the browser has dropped or damaged is fetched again when there is signal. @param {Member[]} files */
async function repair(files) {
  const members = await caches.open(MEMBERS)
  for (const file of files) {
    try {
      await bring(members, file)
    } catch {
      return
    }
  }
}

/** @param {ArrayBuffer} bytes */
async function hex(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('')
}
