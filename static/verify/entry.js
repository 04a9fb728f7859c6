// Read an entry: the twin of inspect_app/entry/format.py, but for the fields of each kind's body, which only the command
// `seamwalk verify` looks through.

import { parseEntry } from '../entry/parse.js'
import { Refused } from '../entry/refused.js'
import { count, digest, integer, listOf, mapping, moment, name, nullable, record, text, version7 } from './form.js'

/** @typedef {import('../entry/parse.js').Jws & {kind: string}} Entry */

const clock = record({ monotonic: integer, server: nullable(text), age: nullable(integer), zone: text })
/** @type {Record<string, import('./form.js').Check>} */
const ENVELOPE = {
  id: version7, job: version7, subject: name, replaces: listOf(digest), at: moment, clock, seq: count,
  prev: nullable(digest), by: name, build: text, body: mapping,
}

/** Its signature is not verified. Throws Refused. @param {string} token @param {string[]} kinds @returns {Promise<Entry>} */
export async function readEntry(token, kinds) {
  const jws = await parseEntry(token)
  const { payload } = jws
  const { v, kind } = payload
  if (v !== 1) throw new Refused('unknown_version', 'v', v)
  if (!kinds.includes(kind)) throw new Refused('unknown_kind', 'kind', kind)
  for (const [member, check] of Object.entries(ENVELOPE)) {
    if (!(member in payload)) throw new Refused('missing_field', member)
    check(payload[member], member)
  }
  if ((payload.seq === 0) !== (payload.prev === null)) throw new Refused('bad_field', 'prev', payload.prev)
  return { ...jws, kind }
}
