// Send one photo by tus 1.0.0 (creation, checksum). The server's offset is the only truth: after any doubt ask by
// HEAD, then go on from there. The upload's address is kept on the phone and survives everything but a 404.

import { changeRow, settle, verifiedReceipt } from '../outbox/settle.js'
import { CHUNK, nextPiece } from '../photo/chunks.js'
import { readChunk } from '../photo/rows.js'
import { Trouble } from '../words/trouble.js'
import { withDb } from '../storage/database.js'
import { failed, refuse } from './entries.js'
import { adapt } from './pace.js'
import { outcome } from './retry.js'
import { callAs } from '../people/token.js'

const TUS = { 'Tus-Resumable': '1.0.0' }
const DOUBTS = 5 // in a row without a byte moved, then this photo waits for another round
const CREATIONS = 3

const SMALLEST = 8 * 1024 // 4 s at 16 kbit/s
const PIECES = { least: SMALLEST, most: CHUNK }
let piece = 16 * 1024 // until a link is known to be quick

/**
 * @param {any} person @param {{jwk: any}} server @param {any} row of the outbox @param {() => void} progress
 * @throws {Trouble} when the link or the token fails
 */
export async function sendPhoto(person, server, row, progress) {
  const photo = await withDb(['photos'], 'readonly', (tx) => tx.store.get([row.person, row.name]))
  if (!photo) return damaged(row, 0)
  try {
    await send(person, server, row, photo, progress)
  } catch (fault) {
    if (!(fault instanceof Trouble) || fault.code !== 'outbox.photo_damaged') throw fault
    await damaged(row, Number(fault.facts.chunk))
  }
}

/** @param {any} row @param {number} chunk */
function damaged(row, chunk) {
  return changeRow(row, { state: 'damaged', refusal: { code: 'photo_damaged', field: 'photo', value: row.name,
    message: '', wayOut: '', chunk } })
}

/** @param {any} person @param {any} server @param {any} row @param {any} photo @param {() => void} progress */
async function send(person, server, row, photo, progress) {
  if (row.failures && (await fetchReceipt(person, server, row))) return progress()
  let address = row.upload
  let offset = address ? null : 0
  let doubts = 0
  for (let creations = 0; doubts < DOUBTS;) {
    if (!address) {
      if (creations >= CREATIONS) break
      creations += 1
      const made = await create(person, row, photo)
      if (!made.address) {
        if (await fetchReceipt(person, server, row)) return progress()
        return refuseOrFail(row, made.reply)
      }
      address = made.address
      offset = 0
    }
    offset ??= await askOffset(person, row, address, photo.size)
    if (offset === GONE) {
      address = null
      await changeRow(row, { upload: null })
    } else if (offset === null) {
      doubts += 1
    } else if (offset === photo.size) {
      if (await fetchReceipt(person, server, row)) return progress()
      doubts += 1
      offset = null
    } else {
      const before = offset
      offset = await sendPiece(person, row, photo, address, offset)
      doubts = offset !== null && offset > before ? 0 : doubts + 1
      if (!doubts) progress()
    }
  }
  await changeRow(row, { failures: row.failures + 1 })
  throw new Trouble('sync.no_receipt', { field: 'photo', value: row.name })
}

/** A definite no keeps the photo with its reason; all else is the link's fault. @param {any} row @param {any} reply */
async function refuseOrFail(row, reply) {
  if (outcome(reply.status) !== 'item') throw failed(reply)
  await refuse(row, { status: 'refused', ...reply.data?.error, code: reply.data?.error?.code ?? `http_${reply.status}` })
}

/** @param {any} person @param {any} row @param {any} photo */
async function create(person, row, photo) {
  const metadata = Object.entries({ job: row.job, sha256: row.name, type: photo.type })
    .map(([name, value]) => `${name} ${btoa(value)}`).join(',')
  const reply = await callAs(person, 'POST', '/api/photos', { expect: 'tus',
    headers: { ...TUS, 'Upload-Length': String(photo.size), 'Upload-Metadata': metadata } })
  const location = reply.headers.get('Location')
  if (outcome(reply.status) !== 'done' || !location) return { address: null, reply }
  // Only the path counts: behind a proxy the server may name itself otherwise, and the token goes nowhere else.
  const { pathname, search } = new URL(location, globalThis.location.href)
  const address = pathname + search
  await changeRow(row, { upload: address }).catch((fault) => { // without room for it, it serves this once
    if (fault?.code !== 'outbox.disk_full') throw fault
  })
  return { address, reply }
}

const GONE = -1

/** @returns {Promise<number | null>} the server's offset, GONE, or null when it did not say
 * @param {any} person @param {any} row @param {string} address @param {number} size */
async function askOffset(person, row, address, size) {
  const reply = await callAs(person, 'HEAD', address, { expect: 'tus', headers: TUS })
  if (reply.status === 404 || reply.status === 410) return GONE
  return readOffset(reply, size)
}

/** @param {any} reply @param {number} size */
function readOffset(reply, size) {
  const offset = Number(reply.headers.get('Upload-Offset') ?? NaN)
  return outcome(reply.status) === 'done' && Number.isInteger(offset) && offset >= 0 && offset <= size ? offset : null
}

/** @returns {Promise<number | null>} the new offset, or null: ask @param {any} person @param {any} row @param {any} photo
 * @param {string} address @param {number} offset */
async function sendPiece(person, row, photo, address, offset) {
  const { n, within, length } = nextPiece(photo.size, offset, piece)
  const part = (await readChunk(photo.sha256, n, photo.chunks[n])).slice(within, within + length)
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', part))
  const started = performance.now()
  try {
    const reply = await callAs(person, 'PATCH', address, { expect: 'tus', body: part, headers: { ...TUS,
      'Content-Type': 'application/offset+octet-stream', 'Upload-Offset': String(offset),
      'Upload-Checksum': `sha256 ${btoa(String.fromCharCode(...digest))}` } })
    const reached = readOffset(reply, photo.size)
    piece = adapt(piece, length, reached === offset + length ? performance.now() - started : null, PIECES)
    return reached === offset + length ? reached : null
  } catch (fault) {
    piece = adapt(piece, length, null, PIECES)
    throw fault
  }
}

/** @returns {Promise<boolean>} whether the server holds it @param {any} person @param {any} server @param {any} row */
async function fetchReceipt(person, server, row) {
  const reply = await callAs(person, 'GET', `/api/photos/receipt?job=${row.job}&sha256=${row.name}`)
  const kept = reply.data?.error
  if (kept?.code === 'photo_kept_apart') { // whole, and with the office for a decision: a revoked key brought it
    await refuse(row, { status: 'quarantined', ...kept })
    return true
  }
  const token = reply.data?.receipt
  if (!(await verifiedReceipt(token, server, row))) return false
  await settle([{ row, token }])
  return true
}
