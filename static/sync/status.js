// What sending and receiving are doing, for the screen: one object, told on `window` as `seamwalk:sync`.

import { counts } from '../outbox/counts.js'

/**
 * `phase`: `idle` nothing to do; `sending`, `receiving`; `waiting` before another try. `online`: null before the
 * first try, then whether our own server answered last time. `reason`: words key of what stands in the way.
 * @typedef {{phase: 'idle' | 'sending' | 'receiving' | 'waiting', online: boolean | null, reason: string | null,
 *   facts: Record<string, any>, message: string | null, wayOut: string | null, last: string | null,
 *   entries: number, photos: number, oldest: string | null, refused: number, damaged: number, bytes: number,
 *   others: number,
 *   oldestOfAll: string | null}} Status
 */

/** @type {Status} */
let now = { phase: 'idle', online: null, reason: null, facts: {}, message: null, wayOut: null, last: null,
  entries: 0, photos: 0, oldest: null, refused: 0, damaged: 0, bytes: 0, others: 0, oldestOfAll: null }

/** @returns {Status} as of the last event */
export function status() {
  return now
}

/** Note a change, count again and tell the window. @param {Partial<Status>} change */
export async function tell(change) {
  now = { ...now, ...change }
  try {
    now = { ...now, ...(await counts()), ...change }
  } catch {
    // the phone's storage does not answer just now: the last counts stand
  }
  window.dispatchEvent(new CustomEvent('seamwalk:sync', { detail: now }))
}

/** Is something on its way right now? An update of the app waits until not. */
export function isBusy() {
  return now.phase === 'sending'
}
