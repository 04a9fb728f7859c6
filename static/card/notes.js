// What every sheet says below its pictures: which way things go, what the metal can do to a hand, and who stands above it.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { number } from '../words/number.js'
import { spoken } from './amount.js'

/** @param {{card: any, assembly: any}} props */
export function Notes({ card, assembly }) {
  const most = card.approved?.run ?? assembly.fixed_clip_run ?? assembly.longest_run
  const uneven = card.pieces.some((/** @type {any} */ piece) => piece.hole.ridge.value !== -piece.hole.eave.value)
  return html`<div class="card-notes">
    ${card.pieces.length > 0 && html`<ul class="rules">
      <li>${say(`card.way.${card.kind}`)}</li>
      <li>${say('card.between_columns')}</li>
      <li>${say(`card.measured.${card.kind}`, { error: spoken(card.error) })}${uneven ? ' ' + say('card.uneven') : ''}</li>
      <li>${say('card.drift', { change: number(card.drift.change.value, card.drift.change.unit), movement: number(card.drift.movement.value, card.drift.movement.unit), run: number(card.lead.run.value, card.lead.run.unit) })}</li>
    </ul>`}
    ${most && html`<p>${say('card.approved_run', { run: number(most.value, most.unit) })}</p>`}
    <p class="card-care">▲ ${['hot', 'wet', 'edges'].map((one) => say(`card.care.${one}`)).join(' ')}</p>
    <p>${say('card.stands')}</p>
  </div>`
}
