// Bring over what others recorded: jobs, then entries by cursor. The cursor moves in the transaction that keeps
// the entries, so a cut brings some twice and loses none.

import { decode } from '../entry/base64url.js'
import { digestOf } from '../entry/digest.js'
import { verifiedReceipt } from '../outbox/settle.js'
import { Trouble } from '../words/trouble.js'
import { withDb } from '../storage/database.js'
import { readMeta, writeMeta } from '../storage/meta.js'
import { withRoom } from '../storage/room.js'
import { failed } from './entries.js'
import { adapt } from './pace.js'
import { noteRestorations } from '../people/restorations.js'
import { callAs } from '../people/token.js'

const LEAST = 4 // entries: some 10 KB with their receipts
const MOST = 200
let page = 16 // entries asked for at once, until a link is known to be quick

/** Keeps who belongs to which job. @param {any} person @returns {Promise<string[]>} ids of the person's jobs */
export async function pullJobs(person) {
  const reply = await callAs(person, 'GET', '/api/jobs')
  if (!Array.isArray(reply.data?.jobs)) throw failed(reply)
  await writeMeta(['jobs', person.id], reply.data.jobs)
  await noteRestorations(reply.data.restorations)
  return reply.data.jobs.map((/** @type {any} */ job) => job.id)
}

/**
 * Everything new in the person's jobs. A job that the person joined later, or sees otherwise than before, has entries
 * before the cursor: it is brought whole first, under a cursor of its own.
 * @param {any} person @param {{jwk: any}} server @param {string[]} jobs @param {() => void} progress
 * @throws {Trouble} `sync.forged` at the first entry whose receipt the pinned key did not sign: the cursor stays
 *   before it
 */
export async function pullEntries(person, server, jobs, progress) {
  const whole = await readMeta(['whole', person.id])
  const sights = new Map(((await readMeta(['jobs', person.id])) ?? []).map((/** @type {any} */ job) => [job.id, job.sight]))
  const named = (/** @type {string} */ id) => (sights.get(id) ? `${id} ${sights.get(id)}` : id)
  for (const job of whole ? jobs.filter((id) => !whole.includes(named(id))) : []) {
    const before = whole.some((/** @type {string} */ name) => name.startsWith(job))
    if (before && !sights.get(job)) await writeMeta(['cursor', person.id, job], 0) // all of it, as once before
    await pullFrom(person, server, job, progress, sights.get(job))
  }
  await pullFrom(person, server, null, progress)
  const known = [...(whole ?? []).filter((/** @type {string} */ name) => !jobs.some((id) => name.startsWith(id))), ...jobs.map(named)]
  if (known.some((name) => !whole?.includes(name)) || known.length !== whole?.length) await writeMeta(['whole', person.id], known)
}

/** @param {any} person @param {any} server @param {string | null} job @param {() => void} progress
 * @param {string} [sight] what of the job is seen, where it is not all */
async function pullFrom(person, server, job, progress, sight) {
  const cursor = ['cursor', person.id, ...(job ? [job] : []), ...(sight ? [sight] : [])]
  for (let more = true; more;) {
    const after = (await readMeta(cursor)) ?? 0
    const reply = await asked(person, `/api/entries?after=${after}&limit=${page}${job ? `&job=${job}` : ''}`)
    if (!Array.isArray(reply.data?.entries) || !Number.isInteger(reply.data.next)) throw failed(reply)
    const came = []
    for (const item of reply.data.entries) came.push(await checked(person, server, item))
    await commit(person.id, came, cursor, reply.data.next)
    if (came.length) progress()
    more = reply.data.more === true && reply.data.next > after
  }
}

/** @param {any} person @param {string} path */
async function asked(person, path) {
  const started = performance.now()
  let reply = null
  try {
    reply = await callAs(person, 'GET', path)
    return reply
  } finally {
    page = adapt(page, reply?.data?.entries?.length ?? 0, reply && performance.now() - started, { least: LEAST, most: MOST })
  }
}

/** @param {any} person @param {any} server @param {any} item */
async function checked(person, server, { seq, entry, receipt }) {
  const parts = String(entry).split('.')
  const digest = await digestOf(`${parts[0]}.${parts[1]}`)
  const { header, payload } = opened(parts)
  const row = { what: 'entry', name: digest, size: 0, job: payload?.job }
  if (!payload || !(await verifiedReceipt(receipt, server, row))) {
    throw new Trouble('sync.forged', { field: 'receipt', value: String(seq) })
  }
  return { digest, job: payload.job, kid: header.kid, token: entry, seq, receipt, needs: definitionsIn(payload) }
}

/** @param {string[]} parts @returns {{header?: any, payload?: any}} empty for what no one can read */
function opened(parts) {
  try {
    const [header, payload] = parts.slice(0, 2).map((part) => JSON.parse(new TextDecoder().decode(decode(part, 'entry'))))
    return { header, payload }
  } catch {
    return {}
  }
}

/** Digests of the definitions an entry rests on. @param {any} payload @returns {string[]} */
export function definitionsIn(payload) {
  const named = payload.kind === 'job' ? Object.values(payload.body?.definitions ?? {}) : [payload.body?.definition]
  return named.filter((digest) => typeof digest === 'string' && /^[A-Za-z0-9_-]{43}$/.test(digest))
}

/** @param {string} person @param {any[]} came @param {any[]} cursor @param {number} next */
function commit(person, came, cursor, next) {
  const at = Date.now()
  return withRoom('text', () => withDb(['entries', 'receipts', 'outbox', 'meta'], 'readwrite', async (tx) => {
    for (const { digest, job, kid, token, seq, receipt, needs } of came) {
      const own = await tx.objectStore('entries').get([person, digest])
      await tx.objectStore('entries').put(own ? { ...own, seq } : { person, digest, job, kid, token, seq, from: 'pulled' })
      // An own entry that comes back is confirmed, even if the answer to its delivery was lost.
      if (own) await tx.objectStore('receipts').put({ person, what: 'entry', job, name: digest, token: receipt, at })
      if (own) await tx.objectStore('outbox').delete([person, 'entry', job, digest])
      for (const needed of needs) {
        if (!(await tx.objectStore('meta').getKey(['definition', needed]))) {
          await tx.objectStore('meta').put(true, ['want', needed])
        }
      }
    }
    await tx.objectStore('meta').put(next, cursor)
  }))
}
