// What the crew reads first: the middle is right between A and B; or that this run and this slot do not go together.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { number } from '../words/number.js'
import { spoken } from './amount.js'

/** @param {{card: any}} props */
export function Lead({ card }) {
  const { lead, kind, error, longest, approved } = card
  const run = number(lead.run.value, lead.run.unit)
  const facts = { run, side: say(`toward_${lead.side}`), error: spoken(error) }
  const over = approved?.verdict === 'fail' && html`<div class="problem"><strong>▲ ${say('card.over_approved', { run, most: number(approved.run.value, approved.run.unit) })}</strong></div>`
  if (!card.together) {
    return html`${over}<div class="card-lead stop" data-name="lead" data-holds="no">
      <p class="card-ask">▲ ${say('card.stop')}</p>
      <p class="card-figure">${say(`card.apart.${kind}`)}</p>
      <p class="big">${say(`card.apart.why.${kind}`, facts)}</p>
      <p>${say('card.apart.longest', { aimed: number(longest.aimed.value, longest.aimed.unit), centred: number(longest.centred.value, longest.centred.unit) })}</p>
    </div>`
  }
  const between = { from: lead.from && number(lead.from.value, ''), to: lead.to && number(lead.to.value, lead.to.unit) }
  return html`${over}<div class="card-lead" data-name="lead" data-holds=${lead.holds}>
    <p class="card-ask">${say(`card.centre.${kind}.${lead.holds}`)}</p>
    <p class="card-figure">${say(`card.centre.${lead.holds}`, between)}</p>
    <p class="big">${say(card.pieces.length > 1 ? 'card.centre.run.both' : 'card.centre.run', facts)}${lead.holds === 'between' ? ' ' + say('card.centre.else') : ''}</p>
  </div>`
}
