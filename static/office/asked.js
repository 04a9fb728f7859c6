// What only the office knows is asked for with signal. What was heard stays on the screen when the signal goes, and
// says since when.

import { useEffect, useState } from '../frame/view.js'
import { currentRow } from '../people/current.js'
import { forgetHeard, keepHeard, lastHeard } from '../record/heard.js'
import { refusal } from '../people/session.js'
import { callAs } from '../people/token.js'

const SILENT = ['sync.offline', 'sync.not_our_server']

/** @typedef {{state: 'asking' | 'known' | 'no_signal' | 'refused', data: any, at: number, fault: any, read: () => Promise<void>}} Asked `at`: ms, of `data` */

/**
 * @param {string} address @param {boolean} [keeps] whether what was heard is kept on the phone, for a start without signal
 * @returns {Asked} `data` is null until something was heard
 */
export function useAsked(address, keeps = false) {
  const [known, setKnown] = useState(/** @type {any} */ ({ state: 'asking', data: null, at: 0, fault: null }))
  const read = async () => {
    try {
      const data = await tell('GET', address)
      const at = Date.now()
      setKnown({ state: 'known', data, at, fault: null })
      if (keeps) await keepHeard(address, data, at).catch(() => {}) // a phone without room for it still shows it now
    } catch (fault) {
      const state = SILENT.includes(/** @type {any} */ (fault).code) ? 'no_signal' : 'refused'
      setKnown((/** @type {any} */ old) => ({ ...old, state, fault, ...(keeps && state === 'refused' && { data: null }) }))
      if (keeps && state === 'refused') await forgetHeard(address).catch(() => {}) // it is asked for anew each time anyway
    }
  }
  const readFirst = async () => {
    const before = keeps ? await lastHeard(address).catch(() => null) : null // none that reads is none
    if (before) setKnown((/** @type {any} */ old) => (old.data === null ? { ...old, ...before } : old))
    await read()
  }
  useEffect(() => {
    readFirst()
    addEventListener('online', read)
    return () => removeEventListener('online', read)
  }, [address])
  return { ...known, read }
}

/**
 * One call to the office as who holds the phone.
 * @param {string} method @param {string} address @param {any} [given] JSON, or the bytes of a file (a saved copy, if it names no type)
 * @param {number} [patience] ms, as of `call` @returns {Promise<any>} what it answered
 * @throws {import('../words/trouble.js').Trouble} `office.refused` with the server's words, those of `call`
 */
export async function tell(method, address, given, patience) {
  const options = given instanceof Blob ? { body: given, headers: { 'Content-Type': given.type || 'application/x-tar' }, patience } : given === undefined ? {} : { json: given }
  const reply = await callAs(await currentRow(), method, address, options)
  if (reply.status >= 300) throw refusal('office.refused', 'office', address, reply)
  return reply.data
}
