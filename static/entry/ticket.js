// Verify a random ticket for a draw: the server's word, for this very key, job and series.

import { namesSha256 } from './base64url.js'
import { parseJws, verifyJws } from './parse.js'
import { Refused } from './refused.js'

/** @typedef {{job: string, kid: string, series: 'work' | 'audit'}} Whose */

/**
 * The ticket's payload (`n`, `random`, …), when the pinned server key signed it for this key, job and series. Throws
 * Refused.
 * @param {unknown} token @param {import('./key.js').PublicJwk} serverJwk @param {Whose} whose
 * @returns {Promise<{n: number, random: string}>}
 */
export async function verifyTicket(token, serverJwk, whose) {
  if (typeof token !== 'string') throw new Refused('malformed', 'ticket', token)
  const jws = await parseJws(token, 'seamwalk-statement')
  await verifyJws(jws, serverJwk)
  const { payload } = jws
  if (payload.v !== 1) throw new Refused('unknown_version', 'v', payload.v)
  if (payload.kind !== 'ticket') throw new Refused('unknown_kind', 'kind', payload.kind)
  for (const [member, wanted] of Object.entries(whose)) {
    if (payload[member] !== wanted) throw new Refused('bad_field', `ticket.${member}`, payload[member])
  }
  const { n, random } = payload
  if (!Number.isInteger(n) || n < 0) throw new Refused('bad_field', 'ticket.n', n)
  if (!namesSha256(random)) throw new Refused('bad_field', 'ticket.random', random)
  return { n, random }
}
