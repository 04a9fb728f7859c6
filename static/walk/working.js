// A verdict with its working: the word, the numbers, the rule in words and where it comes from.

import { html } from '../frame/view.js'
import { known, say } from '../words/say.js'
import { number } from '../words/number.js'
import { RESULTS } from './item_row.js'

/** @param {any} reason @returns {string} */
export function because(reason) {
  if (!reason) return ''
  const facts = Object.fromEntries(Object.entries(reason.facts ?? {}).map(([name, fact]) => [name, shownFact(fact)]))
  return say(`reason.${reason.code}`, facts)
}

/** @param {any} fact */
function shownFact(fact) {
  if (fact && typeof fact === 'object' && 'unit' in fact) return number(fact.value, fact.unit)
  return typeof fact === 'string' && known(`input.${fact}`) ? say(`input.${fact}`) : fact
}

/** @param {{answer: any}} props */
export function Working({ answer }) {
  const result = answer.verdict ?? 'not_applicable'
  return html`<section class=${'working ' + result} aria-live="polite" data-name="verdict" data-result=${result}>
    <p class="figure-line"><span class=${'mark ' + result} aria-hidden="true">${RESULTS[result]}</span> ${say(`result.${answer.verdict ?? 'recorded'}`)}</p>
    ${answer.reason && html`<p class="big">${because(answer.reason)}</p>`}
    <dl class="facts">${Object.entries(answer.values).map(([name, one]) => html`<dt>${say(`value.${name}`)}</dt>
      <dd><strong>${number(/** @type {any} */ (one).value, /** @type {any} */ (one).unit)}</strong></dd>`)}</dl>
    <details><summary class="press">${say('item.rule')}</summary>
      <p>${say(`rule.${answer.rule}.formula`)}</p><p class="hint">${say(`rule.${answer.rule}.source`)}</p></details>
  </section>`
}
