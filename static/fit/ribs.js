// All lines at a glance, as the ribs of a roof seen from its eave: one that stands, one that fell, one that is only dashed.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { grouped } from './lines.js'

/** @param {{lines: any[]}} props */
export function Ribs({ lines }) {
  return html`<div class="ribs-figure" data-name="fit-ribs">
    <div class="ribs" aria-hidden="true">${lines.map((one) => html`<span key=${one.line} class=${'rib ' + one.verdict} />`)}</div>
    <p>${grouped(lines).map(([verdict, some]) => say('fit.group', { result: say(`result.${verdict}`), n: some.length })).join(' · ')}</p>
  </div>`
}
