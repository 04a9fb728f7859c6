// What the office last told of something, kept: a phone that starts without signal still shows it, and as of when.

import { currentRow } from '../people/current.js'
import { dropMeta, readMeta, writeMeta } from '../storage/meta.js'

/** Of whoever holds the phone. @param {string} address @returns {Promise<{data: any, at: number} | null>} `at`: ms; null where nothing was */
export async function lastHeard(address) {
  const key = await keyOf(address)
  return (key && (await readMeta(key))) ?? null
}

/** @param {string} address @param {any} data @param {number} at ms */
export async function keepHeard(address, data, at) {
  const key = await keyOf(address)
  if (key) await writeMeta(key, { data, at })
}

/** What somebody may no longer see is not shown from before either. @param {string} address */
export async function forgetHeard(address) {
  const key = await keyOf(address)
  if (key) await dropMeta(key)
}

/** @param {string} address @returns {Promise<string[] | null>} */
async function keyOf(address) {
  const person = await currentRow()
  return person && ['heard', person.id, address]
}
