// How many stops were drawn, how many have come to light, and how each of those went. Nothing of the others.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { revealed, stopsDrawn } from './standing.js'

const MARKS = /** @type {Record<string, string>} */ ({ looked: '✓', part: '?', not_attended: '◇', covered: '▬', unsafe: '△', dropped: '–', due: '◆', next: '→' })

/** @param {{job: string, record: any, lot: any}} props */
export function Sealed({ job, record, lot }) {
  const shown = revealed(record, lot)
  return html`<div class="stack" data-name="sealed">
    <p><strong>${say('day.sealed', { n: stopsDrawn(record, lot) })}</strong></p>
    ${shown.length > 0 && html`<ul class="rows">${shown.map((one) => html`<li key=${`${one.area}/${one.panel}`}><a class="press" href=${path('job', job, 'stop', lot.id, one.panel)} data-name="stop" data-state=${one.state}>
      <span class="mark" aria-hidden="true">${MARKS[one.state]}</span><span class="label">${say('day.panel', { panel: one.panel })}<span class="under">${say(`stop.state.${one.state}`, { panel: one.panel })}</span></span></a></li>`)}</ul>`}
    ${lot.rolling?.missed?.length > 0 && html`<p>▲ ${say('leg.missed', { panels: lot.rolling.missed.join(', ') })}</p>`}
  </div>`
}
