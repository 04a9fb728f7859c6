// The PIN is a screen lock, not proof of who someone is: whoever holds the phone's storage can get round it.
// It keeps colleagues on one phone from writing under each other's name by mistake.

const ROUNDS = 210_000 // PBKDF2-HMAC-SHA-256; four digits stay guessable whatever the count, see above
const FREE_TRIES = 3
const FIRST_WAIT = 5_000
const LONGEST_WAIT = 300_000

/** @param {string} pin @returns {Promise<{salt: ArrayBuffer, rounds: number, hash: ArrayBuffer}>} */
export async function sealPin(pin) {
  const salt = crypto.getRandomValues(new Uint8Array(16)).buffer
  return { salt, rounds: ROUNDS, hash: await derive(pin, salt, ROUNDS) }
}

/** @param {string} pin @param {{salt: ArrayBuffer, rounds: number, hash: ArrayBuffer}} sealed */
export async function pinMatches(pin, sealed) {
  const given = new Uint8Array(await derive(pin, sealed.salt, sealed.rounds))
  const kept = new Uint8Array(sealed.hash)
  return given.every((byte, at) => byte === kept[at])
}

/** What of a typed text can stand in a PIN: its digits, twelve at most. @param {string} text */
export function pinDigits(text) {
  return text.replace(/[^0-9]/g, '').slice(0, 12)
}

/** Four to twelve digits. @param {string} pin */
export function isPin(pin) {
  return /^[0-9]{4,12}$/.test(pin)
}

/**
 * Wait after the `wrong`-th wrong try in a row: none for the first three, then doubling up to five minutes.
 * @param {number} wrong @returns {number} ms
 */
export function waitAfter(wrong) {
  if (wrong < FREE_TRIES) return 0
  return Math.min(LONGEST_WAIT, FIRST_WAIT * 2 ** (wrong - FREE_TRIES))
}

/**
 * What is left of a wait. A clock set back cannot make it longer than the wait itself.
 * @param {{wrong: number, until: number}} tries @param {number} now @returns {number} ms
 */
export function waitLeft(tries, now) {
  return Math.max(0, Math.min(tries.until - now, waitAfter(tries.wrong)))
}

/** @param {string} pin @param {ArrayBuffer} salt @param {number} iterations */
async function derive(pin, salt, iterations) {
  const key = await crypto.subtle.importKey('raw', new TextEncoder().encode(pin), 'PBKDF2', false, ['deriveBits'])
  return crypto.subtle.deriveBits({ name: 'PBKDF2', hash: 'SHA-256', salt, iterations }, key, 256)
}
