// The drawn places of one panel: each a tap to its sheet. Covered already, or not safe to reach, is a full answer.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { MainAction } from '../frame/main_action.js'
import { Problem } from '../frame/problem.js'
import { MARKS, stateOf } from '../roof/state.js'
import { zoneName } from '../roof/names.js'
import { lookAt } from './look_at.js'
import { tape } from '../frame/tape.js'

/**
 * @param {{job: string, record: any, definitions: any[], walk: any, lot: any, area: string, panel: number, places: any[], here: string[], locked?: boolean, quiet?: boolean}} props
 *   `here`: steps of this screen; `locked`: nothing can be entered any more; `quiet`: another press of the screen comes first
 */
export function DrawnPlaces({ job, record, definitions, walk, lot, area, panel, places, here, locked, quiet }) {
  const [fault, setFault] = useState(/** @type {any} */ (null))
  const inOrder = [...places].sort((a, b) => Number(a.from_low_end.value) - Number(b.from_low_end.value)) // as one walks up the leg
  const first = quiet ? null : inOrder.find((place) => !place.station)
  const look = (/** @type {any} */ place, /** @type {'yes' | 'unsafe' | 'covered'} */ reached) => () => lookAt({ job, walk, lot, area, panel, place, reached, here })
  const short = (/** @type {any} */ place, /** @type {'unsafe' | 'covered'} */ reached) => () => { look(place, reached)().catch(setFault) }
  return html`<ul class="rows drawn-places">${inOrder.map((place) => html`<li key=${place.index} class="stack" data-name="drawn-place" data-state=${place.state}>
      ${place.station && record.stations[place.station] ? html`<${Seen} ...${{ job, record, definitions, place, here }} />`
      : locked ? html`<p class="row"><strong>${tape(place.from_low_end)}</strong><span>${placeUnder(place)}</span></p>`
      : html`<${MainAction} name="look" plain=${place !== first} label=${say('stop.place', { distance: tape(place.from_low_end) })} under=${placeUnder(place)} run=${look(place, 'yes')} />
        ${walk && html`<div class="ways"><button type="button" class="press" data-name="place-covered" onClick=${short(place, 'covered')}>${say('stop.covered')}</button>
          <button type="button" class="press" data-name="place-unsafe" onClick=${short(place, 'unsafe')}>${say('stop.unsafe')}</button></div>`}`}
    </li>`)}</ul>
    <${Problem} fault=${fault} />`
}

/** `edge · fastening no. 4 from the low end` @param {any} place */
function placeUnder(place) {
  const count = say('stop.place.under', { n: place.index + 1 })
  return place.zone ? `${zoneName(place.zone)} · ${count}` : count
}

/** A place somebody came to, or said why not. @param {{job: string, record: any, definitions: any[], place: any, here: string[]}} props */
function Seen({ job, record, definitions, place, here }) {
  const station = record.stations[place.station]
  const state = stateOf(record, definitions, station)
  return html`<a class=${'press tall ' + state} href=${path('job', job, 'station', station.id, ...here)} data-name="seen-place">
    <span class=${'mark ' + state} aria-hidden="true">${MARKS[state]}</span>
    <span class="label">${tape(place.from_low_end)}<span class="under">${place.zone ? `${zoneName(place.zone)} · ` : ''}${say(`state.${state}`)}</span></span></a>`
}
