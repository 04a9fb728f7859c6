// What was put into a rule, in words a person can follow: quantities, counts, lists, choices; taps are drawn.

import { known, say } from '../words/say.js'
import { number } from '../words/number.js'
import { places } from './verdict.js'

const CHOICES = ['slot.third.', 'slot.end_hidden.']

/** @param {any} answer of the rulebook @returns {[string, string][]} name and text of each input */
export function putIn(answer) {
  return Object.entries(answer.inputs ?? {}).flatMap(([name, value]) => {
    const text = shown(value, answer.rule)
    return text === null ? [] : [/** @type {[string, string]} */ ([name, text])]
  })
}

/** @param {any} value @param {string} rule @returns {string | null} */
function shown(value, rule) {
  if (value === null || value === undefined) return null
  if (typeof value === 'boolean') return say(value ? 'yes' : 'no')
  if (typeof value === 'number') return number(value)
  if (typeof value === 'string') return say([...CHOICES.map((one) => one + value), value].find(known) ?? '') || value
  if (Array.isArray(value)) return value.map((one) => shown(one, rule)).join('; ')
  return value.unit === undefined ? null : number(value.value, value.unit, places(rule, value.unit))
}
