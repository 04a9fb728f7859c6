// The twin of inspect_app/entry/strict_json.py: JSON that cannot be read in two ways.

import { Refused } from './refused.js'
import { checkText } from './plain.js'

const DEEPEST = 32
// One that never ends runs to the end of the text: tried again from each of its quotes, 64 KiB would take seconds.
const STRING = /"(?:[^"\\]|\\.)*(?:"|\\?$)/gs
const TOKEN = /"(?:[^"\\]|\\.)*"(\s*:)?|[{}]|-?[0-9][0-9.eE+-]*/gs

/**
 * The JSON object in `bytes`. Throws Refused `bad_text`, `too_deep`, `duplicate_key`, `bad_number` or
 * `malformed`.
 * @param {Uint8Array} bytes @param {string} field
 * @returns {Record<string, any>}
 */
export function parseStrict(bytes, field) {
  const text = decodeText(bytes, field)
  measure(text, field)
  let value
  try {
    value = JSON.parse(text)
  } catch {
    throw new Refused('malformed', field, text)
  }
  if (value === null || typeof value !== 'object' || Array.isArray(value)) {
    throw new Refused('malformed', field, text)
  }
  checkTokens(text, field)
  return value
}

/** @param {Uint8Array} bytes @param {string} field */
function decodeText(bytes, field) {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)
  } catch {
    throw new Refused('bad_text', field)
  }
}

/** @param {string} text @param {string} field */
function measure(text, field) {
  let depth = 0
  for (const character of text.replace(STRING, '')) {
    if (character === '[' || character === '{') depth += 1
    if (character === ']' || character === '}') depth -= 1
    if (depth > DEEPEST) throw new Refused('too_deep', field, DEEPEST)
  }
}

/**
 * The grammar is already known to hold; JSON.parse says nothing about the rest.
 * @param {string} text @param {string} field
 */
function checkTokens(text, field) {
  /** @type {Set<string>[]} */
  const objects = []
  for (const [token, colon] of text.matchAll(TOKEN)) {
    if (token === '{') objects.push(new Set())
    else if (token === '}') objects.pop()
    else if (token[0] === '"') checkString(token, colon, objects, field)
    else if (/[.eE]/.test(token) || token === '-0' || !Number.isSafeInteger(Number(token))) {
      throw new Refused('bad_number', field, token)
    }
  }
}

/**
 * @param {string} token @param {string | undefined} colon what follows a key
 * @param {Set<string>[]} objects @param {string} field
 */
function checkString(token, colon, objects, field) {
  const string = JSON.parse(colon === undefined ? token : token.slice(0, -colon.length))
  checkText(string, field)
  if (colon === undefined) return
  const keys = objects[objects.length - 1]
  if (keys.has(string)) throw new Refused('duplicate_key', field, string)
  keys.add(string)
}
