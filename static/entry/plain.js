// What may be signed: values that every reader of JSON understands alike.

import { Refused } from './refused.js'

const DEEPEST = 32

/**
 * Throws Refused `bad_number` (a fraction, beyond ±(2^53−1), −0), `bad_text` (NUL, a lone surrogate),
 * `too_deep`, or `bad_field` (a Date, a Map, a hole in a list: what JSON would quietly turn into something
 * else). A member that is `undefined` is absent, as JSON leaves it out.
 * @param {unknown} value @param {string} field @param {number} [depth]
 */
export function checkPlain(value, field, depth = 0) {
  if (value === null || typeof value === 'boolean') return
  if (typeof value === 'number') {
    if (!Number.isSafeInteger(value) || Object.is(value, -0)) throw new Refused('bad_number', field, value)
  } else if (typeof value === 'string') {
    checkText(value, field)
  } else if (typeof value === 'object') {
    if (depth === DEEPEST) throw new Refused('too_deep', field, DEEPEST)
    checkMembers(value, field, depth + 1)
  } else {
    throw new Refused('bad_field', field, typeof value)
  }
}

/** @param {string} text @param {string} field */
export function checkText(text, field) {
  // With the u flag a pair is one character, so only lone surrogates match.
  if (/\0|\p{Surrogate}/u.test(text)) throw new Refused('bad_text', field, text)
}

/** @param {object} value @param {string} field @param {number} depth */
function checkMembers(value, field, depth) {
  if (Array.isArray(value)) {
    // By index, not forEach: a hole is a value JSON would write as null.
    for (let at = 0; at < value.length; at += 1) checkPlain(value[at], `${field}[${at}]`, depth)
    return
  }
  const kind = Object.getPrototypeOf(value)
  if (kind !== Object.prototype && kind !== null) {
    throw new Refused('bad_field', field, kind.constructor?.name)
  }
  for (const [key, member] of Object.entries(value)) {
    checkText(key, field)
    if (member !== undefined) checkPlain(member, `${field}.${key}`, depth)
  }
}
