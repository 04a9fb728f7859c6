// Holds that somebody went over, which stay visible for ever, and how far both ways was looked from where a place failed.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { onceEach } from './once_each.js'

/** @param {{lot: any}} props */
export function GoneOver({ lot }) {
  const over = (lot.holds ?? []).filter((/** @type {any} */ one) => one.state === 'covered_against')
  const unseen = (lot.holds ?? []).filter((/** @type {any} */ one) => one.unseen)
  const failed = onceEach(lot.failed ?? []).map((/** @type {any} */ one) => html`<p key=${`${one.panel}/${one.bounded}`} class=${one.bounded ? '' : 'problem'} data-name="failed">${say('lot.failed', one)} ${say(one.bounded ? 'lot.failed.bounded' : 'lot.failed.not_bounded')}</p>`)
  if (over.length === 0 && unseen.length === 0) return html`<p>✓ ${say('lot.holds.none')}</p>${failed}`
  return html`<ul class="rows" data-name="holds">
    ${over.map((/** @type {any} */ one) => html`<li key=${`${one.panel}/${one.why}`} class="problem" data-name="gone-over"><strong><span aria-hidden="true">✕</span> ${say('lot.holds.over', { panel: one.panel, why: say(`hold.why.${one.why}`) })}</strong></li>`)}
    ${unseen.map((/** @type {any} */ one) => html`<li key=${`u${one.panel}/${one.why}`} class="problem" data-name="released-unseen"><strong><span aria-hidden="true">▲</span> ${say('lot.holds.unseen', { panel: one.panel, why: say(`hold.why.${one.why}`) })}</strong></li>`)}
  </ul>${failed}`
}
