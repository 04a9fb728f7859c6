// A verdict with its working: the word, the numbers, the rule in words and where it comes from.

import { html } from '../frame/view.js'
import { known, say } from '../words/say.js'
import { number } from '../words/number.js'
import { SlotDrawing } from '../instruments/slot_drawing.js'
import { turned } from '../instruments/toward.js'
import { putIn } from './put_in.js'
import { places } from './verdict.js'
import { RESULTS } from './item_row.js'

/** Said in words beside the drawing, which turns them toward the ridge. */
const DRAWN = ['low', 'high', 'aim', 'offset', 'toward_ridge', 'bound']

/** What was read, then how far it may be off, then its limits, then what is between them; the rulebook's own order is none. */
const ORDER = ['reading', 'longest', 'mean', 'count', 'of', 'share', 'rise', 'degrees', 'percent', 'base', 'offset', '', 'own_error', 'spread', 'bound', 'uncertainty',
  'nominal', 'minimum', 'at_least', 'at_most', 'limit', 'margin', 'risk']
const rank = (/** @type {string} */ name) => ORDER.indexOf(ORDER.includes(name) ? name : '')

/** @param {any} reason @returns {string} */
export function because(reason) {
  if (!reason) return ''
  const facts = Object.fromEntries(Object.entries(reason.facts ?? {}).map(([name, fact]) => [name, shownFact(fact)]))
  return say(`reason.${reason.code}`, facts)
}

/** The words of an input or a value, a rule's own where one name means two things. @param {string} kind @param {string} rule @param {string} name */
function named(kind, rule, name) {
  const own = `${kind}.${String(rule).split('@')[0]}.${name}`
  return known(own) ? own : `${kind}.${name}`
}

/** @param {any} fact */
function shownFact(fact) {
  if (fact && typeof fact === 'object' && 'unit' in fact) return number(fact.value, fact.unit)
  return typeof fact === 'string' && known(`input.${fact}`) ? say(`input.${fact}`) : fact
}

/**
 * The numbers of an answer in words, in reading order; of a slot or a clip those that its drawing does not show.
 * @param {any} answer @returns {{name: string, word: string, text: string}[]}
 */
export function figures(answer) {
  const drawn = /^(slot|clip)@/.test(answer.rule) && turned(answer)
  const told = (/** @type {string} */ name, /** @type {any} */ one) => one?.unit !== undefined && name !== 'because' && (name !== 'risk' || answer.verdict === 'pass') && !(drawn && DRAWN.includes(name))
  return Object.entries(answer.values ?? {}).filter(([name, one]) => told(name, one)).sort(([a], [b]) => rank(a) - rank(b)).map(([name, one]) => ({ name, word: say(named('value', answer.rule, name)),
    text: name === 'risk' ? number(100 * one.value, '%') : known(`said.${one.value}`) ? say(`said.${one.value}`) : number(one.value, one.unit, places(answer.rule, one.unit)) }))
}

/** @param {{answer: any, then?: boolean}} props `then`: as it was recorded, not as it stands now */
export function Working({ answer, then }) {
  const result = answer.verdict ?? 'not_applicable'
  const drawn = /^(slot|clip)@/.test(answer.rule) && turned(answer)
  return html`<section class=${'working ' + result} aria-live=${then ? 'off' : 'polite'} data-name=${then ? 'verdict-then' : 'verdict'} data-result=${result}>
    <p class="figure-line"><span class=${'mark ' + result} aria-hidden="true">${RESULTS[result]}</span> ${say(`result.${answer.verdict ?? 'recorded'}`)}</p>
    ${answer.reason && html`<p class="big">${because(answer.reason)}</p>`}
    ${drawn && html`<${SlotDrawing} answer=${answer} />`}
    <dl class="facts">${figures(answer).map(({ name, word, text }) => html`<div key=${name}><dt>${word}</dt><dd class=${drawn ? '' : 'number'}>${text}</dd></div>`)}</dl>
    <details><summary class="press">${say('item.rule')}</summary>
      <dl class="facts">${putIn(answer).map(([name, text]) => html`<div key=${name}><dt>${say(named('input', answer.rule, name))}</dt><dd>${text}</dd></div>`)}</dl>
      <p>${say(`rule.${answer.rule}.formula`)}</p><p class="hint">${say(`rule.${answer.rule}.source`)}</p></details>
  </section>`
}
