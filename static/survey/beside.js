// The place's own panel and two each side, each a line.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'

/** @param {{job: string, told: any}} props */
export function Beside({ job, told }) {
  return html`<ul class="rows" data-name="survey-beside">${told.beside.map((/** @type {any} */ one) => html`<li key=${one.panel}>
    <a class="press tall" href=${path('job', job, 'plan', told.place.area, one.panel)} data-name="beside-panel"><span class="label">${one.panel === told.place.panel ? '▶ ' : ''}${say('survey.found.beside.row', {
      panel: one.panel, state: one.state ? say(`coverage.${one.state}`) : say('survey.found.beside.unknown'), looked: one.looked, findings: one.findings.length })}</span><span class="go" aria-hidden="true">→</span></a></li>`)}</ul>`
}
