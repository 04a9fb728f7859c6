// Where the phone was at the shutter, with how far that may be off; nothing where it is not allowed or not known.

import { digits } from './verdict.js'

const LIMIT = 4000 // ms: a photo never waits longer for its place

/** @returns {Promise<{latitude: string, longitude: string, accuracy: string} | null>} */
export function whereAmI() {
  return new Promise((resolve) => {
    if (!navigator.geolocation) return resolve(null)
    const late = setTimeout(() => resolve(null), LIMIT)
    const settle = (/** @type {any} */ found) => {
      clearTimeout(late)
      resolve(found)
    }
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => settle({ latitude: digits(coords.latitude), longitude: digits(coords.longitude), accuracy: digits(coords.accuracy) }),
      () => settle(null), { maximumAge: 60_000, timeout: LIMIT })
  })
}
