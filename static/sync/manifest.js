// The manifest goes first: it tells the office what is still only on this phone. What was told once is not told again:
// the server knows by itself what has arrived since, and in a walk of hundreds of photos the list is long.

import { manifestOf } from '../outbox/rows.js'
import { callAs } from '../people/token.js'
import { readMeta, writeMeta } from '../storage/meta.js'

const AT_ONCE = 50 // items, some 12 KB: a second at 100 kbit/s
const RENEWED = 6 * 3_600_000 // ms after which all of it is told again: a server set back to its backup has forgotten it

/** @param {any} person @param {any[]} rows everything unsent of this person */
export async function sendManifest(person, rows) {
  const kept = await readMeta(['told', person.kid])
  const valid = kept && Math.abs(Date.now() - kept.at) < RENEWED
  const [at, told] = [valid ? kept.at : Date.now(), new Set(valid ? kept.names : [])]
  const { oldest } = manifestOf(rows)
  for (let rest = rows.filter((row) => !told.has(named(row))); rest.length; rest = rest.slice(AT_ONCE)) {
    const part = rest.slice(0, AT_ONCE)
    const reply = await callAs(person, 'POST', '/api/manifest', { json: { ...manifestOf(part), oldest, more: told.size > 0 } })
    if (reply.status >= 300) return // told with the next round: nothing waits for it
    for (const row of part) told.add(named(row))
    await writeMeta(['told', person.kid], { at, names: [...told] }).catch(() => {}) // told once more, if it must be
  }
}

/** @param {{what: string, job: string, name: string}} row */
function named({ what, job, name }) {
  return `${what} ${job} ${name}`
}
