// The phone's clocks as evidence: never an order, never a reason to refuse.

import { moment } from '../entry/moment.js'

/** The last time the server told, and this page's monotonic reading when it came. @type {{time: string, at: number} | null} */
let heard = null

/** @param {unknown} time ISO 8601 text of a server answer */
export function hearServerTime(time) {
  if (typeof time === 'string') heard = { time, at: performance.now() }
}

/** `at` and `clock` of an entry made now. */
export function readClocks() {
  const monotonic = Math.round(performance.now())
  return {
    at: moment(),
    clock: {
      monotonic,
      server: heard ? heard.time : null,
      age: heard ? Math.max(0, monotonic - Math.round(heard.at)) : null,
      zone: Intl.DateTimeFormat().resolvedOptions().timeZone ?? '',
    },
  }
}
