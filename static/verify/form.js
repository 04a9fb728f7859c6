// The form that an entry or a statement of the server must have: the twin of inspect_app/entry/shape.py and moment.py.
// Each check takes a value and its field, and throws Refused `bad_field`.

import { namesSha256 } from '../entry/base64url.js'
import { Refused } from '../entry/refused.js'

/** @typedef {(value: any, field: string) => void} Check */

const MOMENT = /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d):(\d\d)\.\d{3}[+-](\d\d):(\d\d)$/
const UUID7 = /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/

/** @param {(value: any) => boolean} good @returns {Check} */
const only = (good) => (value, field) => {
  if (!good(value)) throw new Refused('bad_field', field, value)
}

export const text = only((value) => typeof value === 'string')
export const integer = only(Number.isInteger)
export const count = only((value) => Number.isInteger(value) && value >= 0)
export const positive = only((value) => Number.isInteger(value) && value > 0)
/** Text that identifies something: 1 to 200 characters, not halves of them. */
export const name = only((value) => typeof value === 'string' && value !== '' && [...value].length <= 200)
export const digest = only(namesSha256)
export const sha256 = only((value) => typeof value === 'string' && /^[0-9a-f]{64}$/.test(value))
export const version7 = only((value) => typeof value === 'string' && UUID7.test(value))
export const mapping = only((value) => value !== null && typeof value === 'object' && !Array.isArray(value))
export const moment = only((value) => typeof value === 'string' && isMoment(value.match(MOMENT)))

/** @param {...string} allowed @returns {Check} */
export const choice = (...allowed) => only((value) => allowed.includes(value))

/** @param {Check} inner @returns {Check} */
export const nullable = (inner) => (value, field) => {
  if (value !== null) inner(value, field)
}

/** @param {Check} inner @returns {Check} */
export const listOf = (inner) => (value, field) => {
  if (!Array.isArray(value)) throw new Refused('bad_field', field, value)
  value.forEach((item, at) => inner(item, `${field}[${at}]`))
}

/**
 * An object with these members; others are kept and ignored, an optional one may be absent or null.
 * @param {Record<string, Check>} required @param {Record<string, Check>} [optional] @returns {Check}
 */
export const record = (required, optional = {}) => (value, field) => {
  mapping(value, field)
  for (const [member, inner] of Object.entries(required)) {
    if (!(member in value)) throw new Refused('missing_field', `${field}.${member}`)
    inner(value[member], `${field}.${member}`)
  }
  for (const [member, inner] of Object.entries(optional)) {
    if (value[member] !== undefined && value[member] !== null) inner(value[member], `${field}.${member}`)
  }
}

/** Whether such a day and hour exist; any year from 1 passes. @param {RegExpMatchArray | null} found */
function isMoment(found) {
  if (!found) return false
  const [year, month, day, hour, minute, second, east, more] = found.slice(1).map(Number)
  const days = [31, year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
  const dated = year > 0 && month > 0 && month < 13 && day > 0 && day <= days[month - 1]
  return dated && hour < 24 && minute < 60 && second < 60 && east < 24 && more < 60
}
