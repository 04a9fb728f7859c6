// Read a statement of the office's server: the twin of inspect_app/entry/statement.py.

import { thumbprint } from '../entry/key.js'
import { parseJws } from '../entry/parse.js'
import { Refused } from '../entry/refused.js'
import { choice, count, digest, moment, name, nullable, positive, record, sha256, text, version7 } from './form.js'

/** @typedef {import('../entry/parse.js').Jws & {kind: string}} Statement */

const jwk = record({ kty: name, crv: name, x: digest, y: digest })
/** @type {Record<string, import('./form.js').Check>} */
const KINDS = {
  enrolment: record({ kid: digest, jwk, person: record({ id: name, name: text, role: name }), device: text }),
  revocation: record({ kid: digest, by: name }),
  receipt: record({ job: version7, n: count, prev: nullable(digest) }, { entry: digest, photo: sha256, size: count, restored: digest }),
  ticket: record({ job: version7, kid: digest, series: choice('work', 'audit'), n: count, random: digest }),
  restoration: record({ last: count, head: nullable(digest) }),
  countersignature: record({
    job: version7, number: positive, n: positive, before: sha256, after: sha256, certificate: sha256, name: text, by: name,
  }),
}

/** Its signature is not verified. Throws Refused. @param {string} token @returns {Promise<Statement>} */
export async function parseStatement(token) {
  const jws = await parseJws(token, 'seamwalk-statement')
  const { payload } = jws
  const { v, kind } = payload
  if (v !== 1) throw new Refused('unknown_version', 'v', v)
  if (typeof kind !== 'string' || !Object.hasOwn(KINDS, kind)) throw new Refused('unknown_kind', 'kind', kind)
  record({ seq: positive, at: moment })(payload, 'statement')
  KINDS[kind](payload, 'statement')
  if (kind === 'enrolment' && (await thumbprint(payload.jwk)) !== payload.kid) throw new Refused('bad_field', 'statement.kid', payload.kid)
  if (kind === 'receipt') namesOneThing(payload)
  if (kind === 'restoration') goesOn(payload)
  return { ...jws, kind }
}

/** @param {Record<string, any>} payload */
function namesOneThing({ entry = null, photo = null, size = null, n, prev }) {
  if ((entry === null) === (photo === null)) throw new Refused('bad_field', 'statement.entry', entry)
  if (photo !== null && size === null) throw new Refused('missing_field', 'statement.size')
  if ((n === 0) !== (prev === null)) throw new Refused('bad_field', 'statement.prev', prev)
}

/** @param {Record<string, any>} payload */
function goesOn({ last, seq, head }) {
  if (last >= seq) throw new Refused('bad_field', 'statement.last', last)
  if ((last === 0) !== (head === null)) throw new Refused('bad_field', 'statement.head', head)
}
