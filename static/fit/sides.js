// Two sides of a line in words: what is asked for, what this roof has, and what is to spare.

import { known, say } from '../words/say.js'
import { number } from '../words/number.js'
import { places } from '../walk/verdict.js'

/** @param {any} answer of one line @returns {{limit: string, found: string, margin: string}} */
export function sides({ line, pair, rule, verdict }) {
  const text = (/** @type {any} */ one) => shown(one, line, rule ?? '')
  const limit = pair.sense === 'between' && pair.upper ? say('fit.between', { low: text(pair.limit), high: text(pair.upper) }) : text(pair.limit)
  return { limit, found: text(pair.found), margin: pair.margin ? spare(pair, verdict, text) : '' }
}

/** @param {any} one quantity, word or list of words @param {string} line @param {string} rule @returns {string} */
function shown(one, line, rule) {
  if (one === undefined || one === null) return '—'
  if (Array.isArray(one)) return one.map((each) => shown(each, line, rule)).join(', ')
  if (typeof one === 'string') return say([`fit.choice.${one}`, `seam.${one}`].find(known) ?? '') || one
  if (line === 'fixed_count') return say('fit.places', { n: Number(one.value) })
  return number(one.value, one.unit, places(rule, one.unit))
}

/** @param {any} pair @param {string} verdict @param {(one: any) => string} text */
function spare({ sense, margin }, verdict, text) {
  const size = Math.abs(Number(margin.value))
  if (sense === 'until') return say(margin.value < 0 ? 'fit.days_past' : 'fit.days_left', { n: size })
  if (sense === 'equal') return size === 0 ? say('fit.exact') : ''
  const spoken = text({ ...margin, value: size })
  if (Number.parseFloat(spoken) === 0) return say(verdict === 'fail' ? 'fit.hair' : 'fit.exact') // less than is shown
  if (margin.value >= 0) return say('fit.to_spare', { margin: spoken })
  return say(sense === 'at_most' ? 'fit.too_much' : 'fit.short', { margin: spoken })
}
