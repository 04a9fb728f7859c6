// Verify the server's word that it was set back to a backup.

import { parseJws, verifyJws } from './parse.js'
import { Refused } from './refused.js'

/**
 * Which numbers may have been given in the time that was undone: those between `last` and `seq`. Throws Refused for
 * anything that the pinned server key did not sign as a restoration.
 * @param {unknown} token @param {import('./key.js').PublicJwk} serverJwk
 * @returns {Promise<{last: number, seq: number, at: string, digest: string}>}
 */
export async function verifyRestoration(token, serverJwk) {
  if (typeof token !== 'string') throw new Refused('malformed', 'restoration', token)
  const jws = await parseJws(token, 'seamwalk-statement')
  await verifyJws(jws, serverJwk)
  const { v, kind, last, seq, at } = jws.payload
  if (v !== 1) throw new Refused('unknown_version', 'v', v)
  if (kind !== 'restoration') throw new Refused('unknown_kind', 'kind', kind)
  if (!Number.isInteger(seq) || !Number.isInteger(last) || last < 0 || last >= seq) throw new Refused('bad_field', 'restoration.last', last)
  return { last, seq, at, digest: jws.digest }
}
