// The vectors that Python and JavaScript share, and the two published keys they are signed with.

import { readFileSync } from 'node:fs'

/** @param {string} name @returns {any} */
function read(name) {
  return JSON.parse(readFileSync(new URL(`../vectors/${name}`, import.meta.url), 'utf8'))
}

export const entries = read('entries.json')
export const statements = read('entries_statements.json')

/** The code of the refusal that the call ends in. @param {() => unknown} call */
export async function codeOf(call) {
  try {
    await call()
  } catch (error) {
    const { name, code } = /** @type {{name: string, code: string}} */ (error)
    if (name !== 'Refused') throw error
    return code
  }
  return 'taken'
}
