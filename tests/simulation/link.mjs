// What lies between a phone and the server: good signal, poor signal, none, a portal that answers everything itself with a
// page, or a wall that says the same no to everything in our own form.
// Where the signal is poor an answer is lost, a request comes twice, late, cut short, or something in between answers.

import { createHash } from 'node:crypto'
import { ask } from './server.mjs'

/** @type {[string, number][]} what becomes of a request where the signal is poor */
const FATES = [['fine', 50], ['request lost', 10], ['request silent', 4], ['answer lost', 12], ['answer silent', 5],
  ['answer cut', 5], ['request cut', 5], ['twice', 6], ['late', 4], ['gateway', 4], ['some status', 12], ['forged', 6]]
export const STATUSES = [301, 400, 401, 401, 403, 403, 404, 404, 409, 409, 410, 413, 415, 422, 429, 460, 500, 502, 503]
const PORTAL = { status: 200, headers: [['Content-Type', 'text/html']], body: Buffer.from('<h1>Welcome</h1>').toString('base64') }
const OUR_KIND = { 'Content-Type': 'application/json', 'Tus-Resumable': '1.0.0' }

export class Link {
  state = 'good'

  /** @param {any} phone with `clock`, `dice`, `cookies` @param {any} world with `serverUp()` and `count` */
  constructor(phone, world) {
    this.phone = phone
    this.world = world
  }

  /** `fetch` of one page. @param {any} page */
  fetchFor(page) {
    return (path, options = {}) => new Promise((resolve, reject) => {
      const { clock, dice } = this.phone
      const { signal } = options
      if (signal?.aborted) return reject(signal.reason)
      signal?.addEventListener('abort', () => reject(signal.reason))
      const fail = () => reject(new TypeError('Failed to fetch'))
      const later = (wait, work) => clock.after(wait, work, page)
      const answer = (reply, cut) => resolve(new Reply(reply, later, cut))
      if (String(path) === '/shell.json') return later(1, () => answer(json({ headers: {} }, 200, { build: this.phone.build })))
      const request = requestOf(String(path), options)
      if (this.state === 'none') return dice.hits(0.7) ? later(dice.between(1, 300), fail) : undefined
      if (this.state === 'wall') return later(dice.between(5, 50), () => answer(json(request, this.status, { error: { code: 'between' } })))
      if (this.state === 'portal') return later(dice.between(5, 50), () => answer(PORTAL))
      this.#send(request, this.state === 'poor' ? dice.pick(FATES) : 'fine', { later, fail, answer })
    })
  }

  /** @param {any} request @param {string} fate @param {any} to */
  #send(request, fate, { later, fail, answer }) {
    const { clock, dice } = this.phone
    const there = dice.between(5, this.state === 'poor' ? 900 : 60)
    const back = dice.between(5, this.state === 'poor' ? 900 : 60)
    // What is on its way arrives, whatever has become of the page meanwhile.
    const arrive = (wait, then, cut) => clock.after(wait, () => then(this.#serve(request, cut)), this.world)
    if (fate === 'request lost') return later(there, fail)
    if (fate === 'request silent') return
    if (fate === 'gateway') return later(there, () => answer({ ...PORTAL, status: dice.hits(0.5) ? 502 : 504 }))
    if (fate === 'some status') return later(there, () => answer(json(request, STATUSES[dice.between(0, STATUSES.length - 1)], { error: { code: 'between' } })))
    if (fate === 'forged') return later(there, () => answer(forged(request)))
    if (fate === 'request cut') return arrive(there, () => later(back, fail), dice.between(0, Math.max(0, request.body.length - 1)))
    if (fate === 'late') later(there, fail)
    if (fate === 'late') return arrive(dice.between(1000, 60_000), () => {})
    if (fate === 'twice') arrive(there + dice.between(0, 5000), () => {})
    arrive(there, (reply) => {
      if (fate === 'answer silent') return
      if (!reply || fate === 'answer lost') return later(back, fail)
      this.#cookies(reply)
      later(back, () => answer(reply, fate === 'answer cut' ? dice.next() : null))
    })
  }

  /** @returns {any} null when the server is away or dies over it */
  #serve(request, cut = null) {
    if (!this.world.serverUp()) return null
    this.world.count('requests')
    const { body, cookies, ...rest } = request
    const headers = { ...rest.headers, ...(cookies && this.phone.cookies.size ? { Cookie: cookieText(this.phone.cookies) } : {}) }
    const reply = ask({ op: 'http', now: this.phone.clock.now, ...rest, headers, body: body.toString('base64'), cut })
    if (!reply.killed) return reply
    this.world.serverDied()
    return null
  }

  #cookies({ headers }) {
    for (const [name, value] of headers) {
      if (name.toLowerCase() !== 'set-cookie') continue
      const [, key, text] = /^([^=]+)=([^;]*)/.exec(value)
      if (text) this.phone.cookies.set(key, text)
      else this.phone.cookies.delete(key)
    }
  }
}

const cookieText = (cookies) => [...cookies].map(([name, value]) => `${name}=${value}`).join('; ')

function requestOf(path, { method = 'GET', headers = {}, body, credentials = 'same-origin' }) {
  const bytes = body === undefined ? Buffer.alloc(0) : typeof body === 'string' ? Buffer.from(body) : Buffer.from(body)
  return { path, method, headers: Object.fromEntries(new Headers(headers)), body: bytes, cookies: credentials !== 'omit' }
}

/** An answer that looks like one of ours. */
function json({ headers }, status, value) {
  const ours = { ...OUR_KIND, 'Seamwalk-Answer': headers['seamwalk-ask'] ?? '' }
  return { status, headers: Object.entries(ours), body: Buffer.from(JSON.stringify(value)).toString('base64') }
}

const digestOf = (token) => createHash('sha256').update(String(token).slice(0, String(token).lastIndexOf('.'))).digest('base64url')

/** A hearty yes, by somebody who is not our server. */
function forged(request) {
  const { path, body } = request
  const receipt = 'eyJhbGciOiJFUzI1NiJ9.eyJraW5kIjoicmVjZWlwdCJ9.AAAA'
  let tokens = []
  try {
    tokens = JSON.parse(body.toString()).entries ?? []
  } catch { /* no batch */ }
  const answers = tokens.map((token) => ({ digest: digestOf(token), status: 'accepted', receipt }))
  const made = json(request, 200, { answers, receipt, entries: [], next: 0, more: false, token: 'forged', scope: 'full', nonce: 'forged', time: '2020-01-01T12:00:00.000+00:00' })
  if (path.startsWith('/api/photos')) made.headers.push(['Upload-Offset', '1'], ['Location', '/api/photos/0'])
  return made
}

/** What `fetch` gives, its body in two parts; cut, it ends in an error after some of it. */
class Reply {
  constructor({ status, headers, body }, later, cut) {
    const bytes = new Uint8Array(Buffer.from(body, 'base64'))
    this.status = status
    this.ok = status >= 200 && status < 300
    this.type = status >= 300 && status < 400 ? 'opaqueredirect' : 'basic'
    this.headers = new Headers(headers)
    const middle = Math.floor(bytes.length * (cut ?? 0.5))
    const parts = [bytes.slice(0, middle), bytes.slice(middle)].filter((part) => part.length)
    this.body = { getReader: () => ({ read: () => new Promise((resolve, reject) => later(0.1, () => {
      if (cut !== null && cut !== undefined && parts.length < 2) return reject(new TypeError('network error'))
      const value = parts.shift()
      resolve({ done: !value, value })
    })) }) }
    this.json = async () => JSON.parse(Buffer.from(bytes).toString())
  }
}
