// Verify a server's receipt. Only this, never a status code, may change an item to "the office has it".

import { parseJws, verifyJws } from './parse.js'
import { Refused } from './refused.js'

/** @typedef {import('./key.js').PublicJwk} PublicJwk */
/** What the receipt must speak of: an entry by digest, or a photo by SHA-256 and size.
 * @typedef {{job: string, entry: string} | {job: string, photo: string, size: number}} Expected */

/**
 * The receipt's payload (`seq`, `n`, `prev`, …) with its `digest`, when the pinned server key signed it and it
 * names the expected thing. Throws Refused: a portal's page, another server or a receipt for something else
 * ends here.
 * @param {unknown} token @param {PublicJwk} serverJwk @param {Expected} expected
 */
export async function verifyReceipt(token, serverJwk, expected) {
  if (typeof token !== 'string') throw new Refused('malformed', 'receipt', token)
  const jws = await parseJws(token, 'seamwalk-statement')
  await verifyJws(jws, serverJwk)
  const { payload } = jws
  if (payload.v !== 1) throw new Refused('unknown_version', 'v', payload.v)
  if (payload.kind !== 'receipt') throw new Refused('unknown_kind', 'kind', payload.kind)
  for (const [member, wanted] of Object.entries(expected)) {
    if (payload[member] !== wanted) throw new Refused('bad_field', `receipt.${member}`, payload[member])
  }
  for (const member of ['seq', 'n']) {
    if (!Number.isInteger(payload[member])) {
      throw new Refused('bad_field', `receipt.${member}`, payload[member])
    }
  }
  return { ...payload, digest: jws.digest }
}
