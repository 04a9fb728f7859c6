// The movement at the place, and each wear mark that somebody measured there. Blames nobody.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { number } from '../words/number.js'
import { shown } from '../frame/amount.js'
import { askedAt } from './asked.js'

/** @param {{record: any, told: any}} props */
export function Wear({ record, told }) {
  const moved = told.wear.answer?.values.movement
  const marks = told.asked.filter((/** @type {any} */ one) => one.wear)
  return html`<div class="stack" data-name="survey-wear">
    ${moved ? html`<p class="big">${say('survey.found.movement', { movement: number(moved.value, moved.unit) })}</p><p>${say(`survey.fixed.${told.wear.fixed}`)}</p>` : html`<p>${say('survey.wear.unknown')}</p>`}
    ${marks.length === 0 && html`<p>${say('survey.mark.none')}</p>`}
    ${marks.map((/** @type {any} */ one) => html`<div key=${one.digest} class="statement stack"><p><strong>${shown(one.wear.length)} ± ${shown(one.wear.uncertainty)}</strong></p><p>${askedAt(record, one)}</p>
      ${one.wear.verdict.reason && html`<p>${say(`reason.${one.wear.verdict.reason.code}`)}</p>`}</div>`)}
    <p class="hint">${say('survey.wear.what')}</p></div>`
}
