// What else the drawing may tell: openings, zones, and where the area lies on the roof. Each on a screen of its own.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Part } from '../frame/screen.js'

/** @param {{job: string, draft: any, name: string}} props `name`: the area's id in the address, or `new` */
export function Further({ job, draft, name }) {
  const under = {
    openings: draft.openings.length ? say('draw.openings.n', { n: draft.openings.length }) : say('draw.openings.none'),
    zones: say(`draw.zones.${draft.zone_state || 'none'}`),
    place: draft.place ? say('draw.place.is', { up: draft.place.up ?? '—' }) : say('draw.place.none'),
  }
  return html`<${Part} name=${say('draw.further')}>${Object.entries(under).map(([step, words]) => html`<a key=${step} class="press tall" href=${path('job', job, 'draw', name, step)} data-name=${`to-${step}`}>
    <span class="label">${say(`draw.${step}`)}<span class="under">${words}</span></span><span class="go" aria-hidden="true">→</span></a>`)}<//>`
}
