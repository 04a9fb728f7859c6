// What nobody ever saw around a place: counted, never painted over.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'

/** @param {{record: any, told: any}} props */
export function Unseen({ record, told }) {
  const { places, panels, drawn } = told.unseen
  const name = (/** @type {string} */ area) => record.areas[area]?.name ?? '—'
  const span = (/** @type {any} */ run) => (run.from === run.to ? run.from : `${run.from}–${run.to}`)
  return html`<div class="stack" data-name="survey-unseen">
    <p class="big">${places ? say('survey.places', { there: places.there, seen: places.looked_at, left: places.left }) : say('survey.places.unknown')}</p>
    <ul class="rows">${panels.map((/** @type {any} */ run, /** @type {number} */ n) => html`<li key=${n}>${name(run.area)} ${span(run)}: ${say(`coverage.${run.state}`)}</li>`)}
      ${drawn.map((/** @type {any} */ one, /** @type {number} */ n) => html`<li key=${`d${n}`}>${say('survey.drawn', { area: name(one.area), panel: one.panel, state: say(`drawn.${one.state}`) })}</li>`)}</ul>
    <p class="hint">${say('survey.unseen.what')}</p></div>`
}
