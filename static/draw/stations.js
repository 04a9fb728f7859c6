// How many places stand in each zone, as the rulebook counts them on this drawing.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { zoneName } from '../roof/names.js'

/** @param {{layout: any}} props */
export function Stations({ layout }) {
  if (!layout?.panels) return null
  return html`<dl class="facts" data-name="stations">${Object.entries(layout.stations).sort(([a], [b]) => (a < b ? -1 : 1)).map(([zone, n]) => html`<div key=${zone} data-zone=${zone}>
    <dt>${zone ? zoneName(zone) : say('plan.zone.untold')}</dt><dd class="number">${n}</dd></div>`)}</dl>`
}
