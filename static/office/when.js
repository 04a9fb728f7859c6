// A time of the server's as this phone's clock would show it: the office and the roof need not be in one zone.

import { today } from '../frame/today.js'

/** @param {string} at ISO 8601 with offset @returns {string} `2026-11-28 17:05` */
export function when(at) {
  const moment = new Date(at)
  const two = (/** @type {number} */ n) => String(n).padStart(2, '0')
  return `${today(moment)} ${two(moment.getHours())}:${two(moment.getMinutes())}`
}
