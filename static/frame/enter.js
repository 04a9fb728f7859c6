// Every entry a screen makes goes through here: checked for numbers that no entry may carry, then kept.

import { keepEntry } from '../outbox/keep.js'
import { jobRecord } from '../record/load.js'

/**
 * @param {{job: string, kind: string, subject: string, body: any, replaces?: string[], draft?: string}} entry
 *   `draft`: key of a draft that this entry makes good, dropped in the same transaction
 * @returns {Promise<{digest: string, id: string}>} resolves only when it is saved on this phone
 */
export function enter(entry) {
  return keepEntry({ replaces: [], ...entry, body: whole(entry.body, entry.kind) })
}

/**
 * As `enter`, resolving when the record has counted it too: until then the screen still shows what was before, and a
 * press would speak of that.
 * @param {Parameters<typeof enter>[0]} entry
 */
export async function enterCounted(entry) {
  const kept = await enter(entry)
  await jobRecord(entry.job).catch(() => {}) // it is saved; that it cannot be counted is the screen's to say
  return kept
}

/**
 * The same value without absent members. A number that is no integer is our mistake: entries carry decimal
 * strings.
 * @param {any} value @param {string} where @returns {any}
 */
export function whole(value, where) {
  if (typeof value === 'number' && !Number.isSafeInteger(value)) throw new TypeError(`${where} holds ${value}, no integer`)
  if (Array.isArray(value)) return value.map((one, at) => whole(one, `${where}.${at}`))
  if (value === null || typeof value !== 'object') return value
  return Object.fromEntries(Object.entries(value)
    .filter(([, one]) => one !== undefined)
    .map(([name, one]) => [name, whole(one, `${where}.${name}`)]))
}
