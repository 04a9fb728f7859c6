// One request to our server. Any answer that is not plainly ours (a portal's page with status 200, a redirect)
// counts as no connection, whatever its status says.

import { hearServerTime } from './clock.js'
import { Trouble } from '../words/trouble.js'

export const IDLE_LIMIT = 20_000 // ms between signs of life

/**
 * @param {string} method @param {string} path
 * @param {{json?: any, body?: BodyInit, headers?: Record<string, string>, token?: string, cookies?: boolean,
 *   expect?: 'json' | 'tus' | 'bytes'}} [options]
 * @returns {Promise<{status: number, headers: Headers, data: any, bytes: ArrayBuffer | null}>}
 * @throws {Trouble} `sync.offline`, `sync.not_our_server`
 */
export async function call(method, path, options = {}) {
  const { json, token, cookies = false, expect = 'json' } = options
  /** @type {Record<string, string>} */
  const headers = { 'Accept-Language': language(), ...options.headers }
  if (json !== undefined) headers['Content-Type'] = 'application/json'
  if (token) headers.Authorization = `Bearer ${token}`
  const silence = new Silence()
  try {
    const reply = await fetch(path, {
      method, headers, signal: silence.signal, redirect: 'manual', cache: 'no-store',
      body: json === undefined ? options.body : JSON.stringify(json),
      credentials: cookies ? 'same-origin' : 'omit',
    })
    silence.life()
    if (reply.type === 'opaqueredirect') throw notOurs(path, 'redirect')
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

function language() {
  return (typeof document !== 'undefined' && document.documentElement.lang) || navigator.language || 'en'
}

/** Aborts a request after 20 s without a sign of life. */
class Silence {
  constructor() {
    this.abort = new AbortController()
    this.signal = this.abort.signal
    this.life()
  }

  life() {
    clearTimeout(this.timer)
    this.timer = setTimeout(() => this.abort.abort(), IDLE_LIMIT)
  }

  end() {
    clearTimeout(this.timer)
  }
}
