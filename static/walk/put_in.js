// What was put into a rule, in words a person can follow: quantities, counts, lists, choices; taps are drawn.

import { known, say } from '../words/say.js'
import { number } from '../words/number.js'
import { places } from './verdict.js'

const CHOICES = ['slot.third.', 'slot.end_hidden.', 'acceptance.', 'seam.', 'said.']
const LISTED = 12 // more than so many are told by their number and their ends

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
  if (Array.isArray(value)) return listed(value, rule)
  return value.unit === undefined ? null : number(value.value, value.unit, places(rule, value.unit))
}

/** Points on a picture are drawn, not told. @param {any[]} values @param {string} rule @returns {string | null} */
function listed(values, rule) {
  if (values.some(Array.isArray)) return null
  if (values.length <= LISTED) return values.map((one) => shown(one, rule)).join('; ')
  const inOrder = [...values].sort((a, b) => Number(a.value ?? a) - Number(b.value ?? b))
  return say('working.many', { n: values.length, low: shown(inOrder[0], rule), high: shown(inOrder.at(-1), rule) })
}
