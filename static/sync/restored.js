// Heed the server's word that it was set back to a backup: send again what it had confirmed since.

import { Refused } from '../entry/refused.js'
import { verifyRestoration } from '../entry/restoration.js'
import { giveBack, isHeeded } from '../outbox/given_back.js'
import { readMeta } from '../storage/meta.js'

/**
 * Everything the server told with its last delivery token or list of jobs. A word that the pinned key did not sign moves
 * nothing. @param {{jwk: any}} server @returns {Promise<number>} how many items are unsent again
 */
export async function heedRestorations(server) {
  let again = 0
  for (const token of (await readMeta(['restorations'])) ?? []) {
    const back = await verified(token, server)
    if (back && !(await isHeeded(back))) again += await giveBack(back)
  }
  if (again) window.dispatchEvent(new CustomEvent('seamwalk:kept', { detail: {} }))
  return again
}

/** @param {unknown} token @param {{jwk: any}} server */
async function verified(token, server) {
  try {
    return await verifyRestoration(token, server.jwk)
  } catch (fault) {
    if (!(fault instanceof Refused)) throw fault
    return null
  }
}
