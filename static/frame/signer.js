// Who said something: the job's own word for whoever signed, before any name or role that the entry gives itself.

import { say } from '../words/say.js'

/** @param {import('./people.js').People} people @param {any} said an entry, or a step of a history @returns {string} empty where nobody told */
export function signer(people, said) {
  return people[said?.by]?.name ?? said?.name ?? ''
}

/** @param {import('./people.js').People} people @param {any} said @returns {string} the role's code; empty where nobody told */
export function signedAs(people, said) {
  return people[said?.by]?.role ?? said?.role ?? ''
}

/** Name and role in words. @param {import('./people.js').People} people @param {any} said @returns {string} */
export function signed(people, said) {
  const role = signedAs(people, said)
  return [signer(people, said), role && say(`role.${role}`)].filter(Boolean).join(', ')
}
