// One request to our server. Each carries a nonce, and only an answer that brings it back is ours: anything else (a
// portal's page or JSON with status 200, a redirect, an answer stored on the way) counts as no connection.

import { encode } from '../entry/base64url.js'
import { hearServerTime } from './clock.js'
import { Trouble } from '../words/trouble.js'

export const IDLE_LIMIT = 20_000 // ms between signs of life
const SLOWEST = 2 // bytes a ms: of a body on its way up the browser tells no sign of life
const LARGEST_ALONE = 64 * 1024 // bytes of one entry, which nothing makes smaller; all else is sent in less after a failure

/**
 * @param {string} method @param {string} path
 * @param {{json?: any, body?: BodyInit, headers?: Record<string, string>, token?: string, cookies?: boolean,
 *   expect?: 'json' | 'tus' | 'bytes', patience?: number}} [options] `patience`: ms more, for a body that cannot go in less
 * @returns {Promise<{status: number, headers: Headers, data: any, bytes: ArrayBuffer | null}>}
 * @throws {Trouble} `sync.offline`, `sync.not_our_server`
 */
export async function call(method, path, options = {}) {
  const { json, token, cookies = false, expect = 'json' } = options
  const asked = encode(crypto.getRandomValues(new Uint8Array(12)))
  /** @type {Record<string, string>} */
  const headers = { 'Accept-Language': language(), 'Seamwalk-Ask': asked, ...options.headers }
  if (json !== undefined) headers['Content-Type'] = 'application/json'
  if (token) headers.Authorization = `Bearer ${token}`
  const sent = json === undefined ? options.body : JSON.stringify(json)
  const silence = new Silence(IDLE_LIMIT + (options.patience ?? Math.min(lengthOf(sent), LARGEST_ALONE) / SLOWEST))
  try {
    const reply = await fetch(path, {
      method, headers, signal: silence.signal, redirect: 'manual', cache: 'no-store', body: sent,
      credentials: cookies ? 'same-origin' : 'omit',
    })
    silence.life()
    if (reply.type === 'opaqueredirect') throw notOurs(path, 'redirect')
    if (reply.headers.get('Seamwalk-Answer') !== asked) throw notOurs(path, `${reply.status}, not an answer to what was asked`)
    return await read(reply, path, expect, silence)
  } catch (fault) {
    if (fault instanceof Trouble) throw fault
    throw new Trouble('sync.offline', { field: 'server', value: path, reason: String(fault) })
  } finally {
    silence.end()
  }
}

/** @param {Response} reply @param {string} path @param {string} expect @param {Silence} silence */
async function read(reply, path, expect, silence) {
  const bytes = await body(reply, silence)
  const isJson = (reply.headers.get('Content-Type') ?? '').split(';')[0].trim() === 'application/json'
  /** @type {{status: number, headers: Headers, data: any, bytes: ArrayBuffer}} */
  const answer = { status: reply.status, headers: reply.headers, data: null, bytes }
  if (isJson && bytes.byteLength) {
    try {
      answer.data = JSON.parse(new TextDecoder().decode(bytes))
    } catch {
      throw notOurs(path, 'unreadable JSON')
    }
    hearServerTime(answer.data?.time)
  }
  const ours = expect === 'tus' ? isJson || reply.headers.get('Tus-Resumable') === '1.0.0'
    : expect === 'bytes' && reply.ok ? true : isJson || reply.status === 204
  if (!ours) throw notOurs(path, `${reply.status} ${reply.headers.get('Content-Type') ?? ''}`)
  return answer
}

/** @param {Response} reply @param {Silence} silence @returns {Promise<ArrayBuffer>} */
async function body(reply, silence) {
  const reader = reply.body?.getReader()
  /** @type {Uint8Array<ArrayBuffer>[]} */
  const parts = []
  for (let part = await reader?.read(); part && !part.done; part = await reader?.read()) {
    silence.life()
    parts.push(part.value)
  }
  return new Blob(parts).arrayBuffer()
}

/** @param {string} path @param {string} seen */
function notOurs(path, seen) {
  return new Trouble('sync.not_our_server', { field: 'server', value: path, reason: seen })
}

/** @param {BodyInit | undefined} body */
function lengthOf(body) {
  return typeof body === 'string' ? body.length : body instanceof ArrayBuffer ? body.byteLength : 0
}

function language() {
  return (typeof document !== 'undefined' && document.documentElement.lang) || navigator.language || 'en'
}

/** Aborts a request after so many ms before the first sign of life, and 20 s between any two. */
class Silence {
  /** @param {number} first */
  constructor(first) {
    this.abort = new AbortController()
    this.signal = this.abort.signal
    this.life(first)
  }

  life(limit = IDLE_LIMIT) {
    clearTimeout(this.timer)
    this.timer = setTimeout(() => this.abort.abort(), limit)
  }

  end() {
    clearTimeout(this.timer)
  }
}
