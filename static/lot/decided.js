// What was decided of a lot, in one word and one sentence, and what would decide it where nothing is decided.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { ofTheLot, said } from './says.js'

export const DECIDED = /** @type {Record<string, string>} */ ({ accepted: '✓', not_accepted: '✕', not_determinable: '?', open: '…' })

/** @param {{lot: any}} props */
export function Decided({ lot }) {
  const { state } = lot.decision
  return html`<div class=${'decided ' + state} data-name="decision" data-state=${state}>
    <p class="decided-word"><span class="decided-mark" aria-hidden="true">${DECIDED[state]}</span> ${say(`lot.state.${state}`)}</p>
    ${ofTheLot(lot).verdict.map(said).map((text) => html`<p key=${text} class="big">${text}</p>`)}
  </div>`
}
