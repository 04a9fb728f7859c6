// The worker: keeps a complete, checked copy of the app on the phone, and answers from it without a network.
//
// The server puts one line before this text, `const BUILD = "…"`, the digest of the shell's list; so a new build
// is a new worker. Files come in packs: a phone far from a mast pays for each asking. What has come is kept by its
// digest, so a new build fetches only what it lacks and a cut install goes on where it stopped. A whole build is one
// piece in the cache, read once; the old one stays whole until the new one has taken over.
/* global BUILD */

/** @typedef {{url: string, sha256: string, size: number, type: string}} Member */
/** @typedef {{build: string, files: Member[], headers?: Record<string, string>}} List */
/** @typedef {{list: List, members: Map<string, {file: Member, bytes: Uint8Array<ArrayBuffer>}>}} App by address */
/** @typedef {{request: Request, url: URL}} Asked */

const here = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self))

const APPS = 'seamwalk-apps' //   /app/BUILD -> a build that is whole: its list, a line feed, its files end to end
const PARTS = 'seamwalk-parts' // /part/SHA256 -> files that came before an install was cut, in the same form
const OURS = /^seamwalk-(room|spare)/ // of the page: room held, and second copies of what is unsent
const PACK = 128 * 1024 // plain bytes asked for at once: what a cut may cost
const MOST = 100 // files of one pack, as the server has it
const WAVE = 3 // packs fetched at once
// What the page and its files are answered with: as the server said it of the list.
const GUARDS = ['Content-Security-Policy', 'X-Content-Type-Options', 'Referrer-Policy', 'Cross-Origin-Opener-Policy', 'Cross-Origin-Resource-Policy']

/**
 * How requests are answered: the first rule that matches, top to bottom.
 * @type {{name: string, when: (asked: Asked) => boolean, answer: null | ((asked: Asked) => Promise<Response>)}[]}
 */
const RULES = [
  { name: 'changes go to the server', when: ({ request }) => request.method !== 'GET', answer: null },
  { name: 'other places are not ours', when: ({ url }) => url.origin !== location.origin, answer: null },
  { name: 'data is never cached', when: ({ url }) => /^\/(api|photos|view)\//.test(url.pathname), answer: null },
  { name: 'the running build is the list it answers from', when: ({ url }) => url.pathname === '/shell.json', answer: ownList },
  { name: 'the rulebook is one text', when: ({ url }) => url.pathname === '/rulebook.json', answer: rulebook },
  { name: 'every page is the app', when: ({ request }) => request.mode === 'navigate', answer: ({ request }) => member('/', request) },
  { name: 'members come from the phone', when: ({ url }) => running?.members.has(url.pathname) ?? true,
    answer: ({ url, request }) => member(url.pathname, request) },
]

/** @type {App | null} */
let running = null
/** Plain bytes of the install under way: to come in all, and come. @type {{total: number, came: number, from: number} | null} */
let coming = null
let asked = performance.now() // when a page last asked for anything

here.addEventListener('install', (event) => event.waitUntil(install()))
here.addEventListener('activate', (event) => event.waitUntil(activate()))
here.addEventListener('message', (event) => event.waitUntil(hear(event)))
here.addEventListener('fetch', (event) => {
  asked = performance.now()
  const ask = { request: event.request, url: new URL(event.request.url) }
  const rule = RULES.find(({ when }) => when(ask))
  if (rule?.answer) event.respondWith(rule.answer(ask))
})

/** All files, each checked; only then the build is kept as whole. A failure leaves what has come for the next try. */
async function install() {
  const reply = await fetch('/shell.json', { cache: 'no-store' })
  const list = /** @type {List} */ (await reply.json())
  if (list.build !== BUILD) throw new Error('the list is of another build; the browser will come again')
  const kept = await keptFiles()
  const missing = new Map(list.files.filter(({ sha256 }) => !kept.has(sha256)).map((file) => [file.sha256, file]))
  coming = { total: [...missing.values()].reduce((sum, { size }) => sum + size, 0), came: 0, from: performance.now() }
  const packs = packed(missing)
  await Promise.all(Array.from({ length: WAVE }, async () => {
    for (let pack = packs.shift(); pack; pack = packs.shift()) await bring(pack, kept)
  }))
  const headers = Object.fromEntries(GUARDS.flatMap((name) => (reply.headers.has(name) ? [[name, String(reply.headers.get(name))]] : [])))
  await (await caches.open(APPS)).put(`/app/${BUILD}`, bound({ ...list, headers }, kept))
  await caches.delete(PARTS)
}

/** @param {Map<string, Member>} missing @returns {Member[][]} */
function packed(missing) {
  const packs = /** @type {Member[][]} */ ([])
  let room = 0
  for (const file of missing.values()) {
    if (room < file.size || (packs.at(-1)?.length ?? MOST) >= MOST) {
      packs.push([])
      room = PACK
    }
    packs.at(-1)?.push(file)
    room -= file.size
  }
  return packs
}

/** @param {Member[]} pack @param {Map<string, Uint8Array<ArrayBuffer>>} kept takes what came */
async function bring(pack, kept) {
  const reply = await fetch('/pack', { method: 'POST', cache: 'no-store', headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ files: pack.map(({ sha256 }) => sha256) }) })
  if (!reply.ok || !reply.body) throw new Error('the pack did not come')
  const came = new Uint8Array(pack.reduce((sum, { size }) => sum + size, 0))
  let filled = 0
  try {
    const reader = reply.body.getReader()
    for (let step = await reader.read(); !step.done; step = await reader.read()) {
      if (filled + step.value.length > came.length) throw new Error('more than was asked for')
      came.set(step.value, filled)
      filled += step.value.length
      if (coming) coming.came += step.value.length
    }
  } finally {
    await keepPart(pack, came.subarray(0, filled), kept)
  }
  const lost = pack.find(({ sha256 }) => !kept.has(sha256))
  if (lost) throw new Error(`not the file that is listed: ${lost.url}`)
}

/** @param {Member[]} pack @param {Uint8Array<ArrayBuffer>} came @param {Map<string, Uint8Array<ArrayBuffer>>} kept */
async function keepPart(pack, came, kept) {
  const good = await checked(unbound(pack, came))
  for (const { file, bytes } of good) kept.set(file.sha256, bytes)
  if (!good.length) return
  const files = good.map(({ file }) => file)
  await (await caches.open(PARTS)).put(`/part/${files[0].sha256}`, bound({ build: '', files }, kept))
}

/** Files on this phone, of whole builds and of cut installs, each checked again. */
async function keptFiles() {
  const kept = /** @type {Map<string, Uint8Array<ArrayBuffer>>} */ (new Map())
  for (const name of [APPS, PARTS]) {
    const cache = await caches.open(name)
    for (const request of await cache.keys()) {
      const app = await opened(await cache.match(request))
      for (const { file, bytes } of await checked([...(app?.members.values() ?? [])])) kept.set(file.sha256, bytes)
    }
  }
  return kept
}

/** @param {List} list @param {Map<string, Uint8Array<ArrayBuffer>>} kept by digest, all of the list's */
function bound(list, kept) {
  const files = list.files.map(({ sha256 }) => /** @type {Uint8Array<ArrayBuffer>} */ (kept.get(sha256)))
  return new Response(new Blob([JSON.stringify(list), '\n', ...files]))
}

/** @param {Member[]} files @param {Uint8Array<ArrayBuffer>} bytes end to end, cut short perhaps */
function unbound(files, bytes) {
  let at = 0
  return files.map((file) => ({ file, bytes: bytes.subarray(at, at += file.size) }))
}

/** @param {Response | undefined} reply @returns {Promise<App | null>} null for nothing, or nothing readable */
async function opened(reply) {
  if (!reply) return null
  const bytes = new Uint8Array(await reply.arrayBuffer())
  const line = bytes.indexOf(10)
  try {
    const list = /** @type {List} */ (JSON.parse(new TextDecoder().decode(bytes.subarray(0, line))))
    return { list, members: new Map(unbound(list.files, bytes.subarray(line + 1)).map((one) => [one.file.url, one])) }
  } catch {
    return null
  }
}

/** Those that are what they are listed as. @param {{file: Member, bytes: Uint8Array<ArrayBuffer>}[]} found */
async function checked(found) {
  const good = await Promise.all(found.map(async ({ file, bytes }) => bytes.length === file.size && (await hex(bytes)) === file.sha256))
  return found.filter((_, at) => good[at])
}

/** Only now is the former build given up. */
async function activate() {
  await here.clients.claim()
  const apps = await caches.open(APPS)
  for (const request of await apps.keys()) {
    if (new URL(request.url).pathname !== `/app/${BUILD}`) await apps.delete(request)
  }
  for (const name of await caches.keys()) {
    if (![APPS, PARTS].includes(name) && !OURS.test(name)) await caches.delete(name)
  }
}

/** @returns {Promise<App | null>} as it stands on the phone */
async function kept() {
  return opened(await (await caches.open(APPS)).match(`/app/${BUILD}`))
}

async function ownList() {
  running ??= await kept()
  return running ? Response.json({ build: running.list.build, files: running.list.files }) : fetch('/shell.json', { cache: 'no-store' })
}

async function rulebook() {
  running ??= await kept()
  if (!running) return fetch('/rulebook.json', { cache: 'no-cache' })
  const own = [...running.members.values()].filter(({ file }) => file.url.startsWith('/rulebook/'))
  return Response.json(Object.fromEntries(own.map(({ file, bytes }) => [file.url.slice('/rulebook/'.length), new TextDecoder().decode(bytes)])))
}

/** @param {string} url @param {Request} request */
async function member(url, request) {
  running ??= await kept()
  const found = running?.members.get(url)
  if (!found) return fetch(request)
  return new Response(found.bytes, { headers: { ...running?.list.headers, 'Content-Type': found.file.type } })
}

/** @param {ExtendableMessageEvent} event */
async function hear(event) {
  /** @type {Record<string, () => any>} */
  const answers = { prove, progress, rest: () => performance.now() - asked, 'take over': () => here.skipWaiting() }
  const answer = answers[event.data?.ask]
  if (answer) event.ports[0]?.postMessage(await answer())
}

/** How far the install is, for who waits for it: ms since it was begun beside the bytes. */
function progress() {
  return coming && { total: coming.total, came: coming.came, took: performance.now() - coming.from }
}

/** Read the build from the phone again, recount and re-hash every file of it, and look for the app's page in it. */
async function prove() {
  const app = await kept()
  const good = app ? await checked([...app.members.values()]) : []
  const whole = new Set(good.map(({ file }) => file.url))
  const missing = (app?.list.files ?? []).map(({ url }) => url).filter((url) => !whole.has(url))
  if (app && !missing.length) running = app
  else await install().catch(() => {}) // what the browser has dropped or damaged is fetched again when there is signal
  const page = good.find(({ file }) => file.url === '/')
  return { build: BUILD, total: app?.list.files.length ?? 0, missing, page: Boolean(page) && new TextDecoder().decode(page?.bytes).includes('<') }
}

/** @param {Uint8Array<ArrayBuffer>} bytes */
async function hex(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('')
}
