// The job's range of the metal as a bar: where the middle is right, where the columns stand, where the metal is now.
// For the eye only; every number on it is the job's or the rulebook's.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { shown } from '../frame/amount.js'

/** @param {{card: any, job: any}} props */
export function Heat({ card, job }) {
  const [cold, , hot] = card.columns.map((/** @type {any} */ column) => column.metal.value)
  const low = cold - (hot - cold) / 2
  const share = (/** @type {number} */ at) => `${Math.min(Math.max((at - low) / (2 * (hot - cold)), 0), 1) * 100}%`
  const { from, to, holds } = card.lead
  const now = card.columns.find((/** @type {any} */ column) => column.name === 'now')
  const band = from && { left: share(from.value), right: `${100 - parseFloat(share(to.value))}%` }
  return html`<div class="heat" data-name="heat">
    <div class="heat-bar" role="img" aria-label=${say('card.heat', { low: shown(job.metal_low), high: shown(job.metal_high) })}>
      ${band && html`<span class="heat-band" style=${band}></span>`}
      ${[cold, (cold + hot) / 2, hot].map((at) => html`<span class="heat-tick" style=${{ left: share(at) }}></span>`)}
      ${now && now.metal.unit === card.columns[0].metal.unit && html`<span class="heat-now" style=${{ left: share(now.metal.value) }}></span>`}
    </div>
    <p class="heat-ends"><span>${shown(job.metal_low)}</span><span>${band && holds !== 'never' ? say(`card.heat.${card.kind}`) : ''}</span><span>${shown(job.metal_high)}</span></p>
  </div>`
}
