// One tab at a time sends: for thrift, never for correctness, since all that is sent may arrive twice. A tab that
// holds the lock and was frozen is passed by after 15 s without a heartbeat; who did not get it asks again soon.

import { withDb } from '../storage/database.js'

const PATIENCE = 5000
const SILENCE = 15_000

/** Run `work` unless another tab is at it. @param {() => Promise<void>} work @returns {Promise<boolean>} whether it ran */
export async function alone(work) {
  if (!navigator.locks) {
    await work()
    return true
  }
  try {
    await navigator.locks.request('seamwalk-sync', { signal: AbortSignal.timeout(PATIENCE) }, work)
    return true
  } catch (fault) {
    if (!(fault instanceof DOMException) || !['AbortError', 'TimeoutError'].includes(fault.name)) throw fault
  }
  const beaten = await withDb(['meta'], 'readonly', (tx) => tx.store.get(['beat']))
  if (beaten !== undefined && Math.abs(Date.now() - beaten) < SILENCE) return false
  await work()
  return true
}

/** The holder is alive. */
export async function beat() {
  await withDb(['meta'], 'readwrite', (tx) => tx.store.put(Date.now(), ['beat']), { relaxed: true })
}
