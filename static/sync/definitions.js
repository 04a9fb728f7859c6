// Bring over the checklist definitions that jobs pin, each checked against the digest it is asked by.

import { encode } from '../entry/base64url.js'
import { withDb } from '../storage/database.js'
import { call } from '../server/request.js'

/** Fetch what is wanted and not here. @param {() => void} progress */
export async function pullDefinitions(progress) {
  const range = IDBKeyRange.bound(['want'], ['want', []])
  const wanted = await withDb(['meta'], 'readonly', (tx) => tx.store.getAllKeys(range))
  for (const [, digest] of wanted) {
    const reply = await call('GET', `/api/definitions/${digest}`, { expect: 'bytes' })
    if (reply.status !== 200 || !reply.bytes) continue // asked again next time
    const found = encode(new Uint8Array(await crypto.subtle.digest('SHA-256', reply.bytes)))
    if (found !== digest) continue // altered on the way, or a portal's page
    const text = new TextDecoder().decode(reply.bytes)
    await withDb(['meta'], 'readwrite', async (tx) => {
      await tx.store.put(text, ['definition', digest])
      await tx.store.delete(['want', digest])
    })
    progress()
  }
}
