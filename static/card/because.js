// Why there is no place to show, in words.

import { known, say } from '../words/say.js'

/** @param {any} reason @returns {string} */
export function because(reason) {
  const facts = Object.fromEntries(Object.entries(reason.facts ?? {}).map(([name, fact]) =>
    [name, typeof fact === 'string' && known(`input.${fact}`) ? say(`input.${fact}`) : fact ?? '—']))
  return say(`reason.${reason.code}`, facts)
}
