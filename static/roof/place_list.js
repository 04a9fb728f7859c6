// The places looked at, as a list beside the drawing: the same marks, with their words.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { MARKS, stateOf } from './state.js'
import { inWalkingOrder } from './order.js'
import { placeParts } from './names.js'

/** @param {{job: string, record: any, definitions: any[], wanted: (station: any) => boolean}} props */
export function PlaceList({ job, record, definitions, wanted }) {
  const stations = inWalkingOrder(record, wanted)
  if (!stations.length) return html`<p>${say('places.none')}</p>`
  return html`<ul class="rows">${stations.map((/** @type {any} */ station) => {
    const state = stateOf(record, definitions, station)
    const [panel, ...rest] = placeParts(station)
    return html`<li key=${station.id}><a class=${'press tall ' + state} href=${path('job', job, 'station', station.id)} data-name="place">
      <span class=${'mark ' + state} aria-hidden="true">${MARKS[state]}</span>
      <span class="label">${say(`state.${state}`)}: ${panel}<span class="under">${[record.areas[station.area]?.name, ...rest].join(' · ')}</span></span>
    </a></li>`
  })}</ul>`
}
