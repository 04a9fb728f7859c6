// Holds that somebody went over: they stay visible for ever, with the panel and the reason it was held.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'

/** @param {{lot: any}} props */
export function GoneOver({ lot }) {
  const over = (lot.holds ?? []).filter((/** @type {any} */ one) => one.state === 'covered_against')
  const unseen = (lot.holds ?? []).filter((/** @type {any} */ one) => one.unseen)
  if (over.length === 0 && unseen.length === 0) return html`<p>✓ ${say('lot.holds.none')}</p>`
  return html`<ul class="rows" data-name="holds">
    ${over.map((/** @type {any} */ one) => html`<li key=${`${one.panel}/${one.why}`} class="problem" data-name="gone-over"><strong><span aria-hidden="true">✕</span> ${say('lot.holds.over', { panel: one.panel, why: say(`hold.why.${one.why}`) })}</strong></li>`)}
    ${unseen.map((/** @type {any} */ one) => html`<li key=${`u${one.panel}/${one.why}`} class="problem" data-name="released-unseen"><strong><span aria-hidden="true">▲</span> ${say('lot.holds.unseen', { panel: one.panel, why: say(`hold.why.${one.why}`) })}</strong></li>`)}
  </ul>`
}
