// Panels that were covered though nobody saw them: named one by one, before anything else.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { panels } from './states.js'

/** @param {{record: any, areas: any[]}} props */
export function Unseen({ record, areas }) {
  const found = areas.map((area) => ({ area, runs: (record.coverage?.[area.id]?.runs ?? []).filter((/** @type {any} */ run) => run.state === 'covered_unseen') }))
    .filter(({ runs }) => runs.length > 0)
  if (found.length === 0) return null
  return html`<div class="problem" data-name="covered-unseen"><strong><span aria-hidden="true">✕</span> ${say('coverage.unseen')}</strong>
    ${found.map(({ area, runs }) => html`<p key=${area.id}>${area.name}: ${runs.map(panels).join(', ')}</p>`)}
    <p>${say('coverage.unseen.what')}</p></div>`
}
