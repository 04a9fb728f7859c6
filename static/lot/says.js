// The sentences of a lot's decision, as the rulebook gives them: a code of the words with its facts. The report says the
// same ones.

import { say } from '../words/say.js'
import { percent } from './name.js'

/** Facts that are shares of one; every other number is a count. */
const SHARES = ['share', 'limit', 'half', 'tenth', 'safe', 'low', 'high', 'confidence']

/** @param {{code: string, facts: Record<string, any>}} sentence @returns {string} */
export function said({ code, facts }) {
  return say(code, Object.fromEntries(Object.entries(facts).map(([name, value]) => [name, SHARES.includes(name) ? percent(value) : value])))
}

const SAMPLE = ['places', 'dropped', 'unseen', 'changed', 'by_hand']

/** What is said of the lot as a whole, in three parts. @param {any} lot @returns {{verdict: any[], sample: any[], series: any[]}} */
export function ofTheLot(lot) {
  const all = lot.says.filter((/** @type {any} */ one) => one.severity === null)
  const sample = all.filter((/** @type {any} */ one) => SAMPLE.includes(short(one)))
  const series = all.filter((/** @type {any} */ one) => /^(isolated|series)/.test(short(one)))
  return { verdict: all.filter((/** @type {any} */ one) => !sample.includes(one) && !series.includes(one)), sample, series }
}

/** What is said of one severity, by what it speaks of. @param {any} lot @param {string} severity @param {string} about as `plan`, with all that begins so @returns {any[]} */
export function ofSeverity(lot, severity, about) {
  return lot.says.filter((/** @type {any} */ one) => one.severity === severity && short(one).split('.')[0] === about)
}

/** @param {{code: string}} sentence */
function short({ code }) {
  return code.replace('lot.says.', '')
}
