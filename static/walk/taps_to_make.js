// Slots answered by a word on the roof whose picture is there: the taps can be made later, before the walk is closed.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Part } from '../frame/screen.js'
import { forStation } from '../checklist/applies.js'
import { placeName } from '../roof/names.js'
import { photosOf } from './pictures.js'
import { answerId, asked } from './sort_items.js'

/** @param {any} record @param {any[]} definitions @param {any} walk @returns {{station: any, definition: any, item: any}[]} */
export function tapsToMake(record, definitions, walk) {
  const places = walk.stations.map((/** @type {string} */ id) => record.stations[id]).filter((/** @type {any} */ one) => one.reached === 'yes')
  return places.flatMap((/** @type {any} */ station) => forStation(record, definitions, station).flatMap((definition) => asked(record, definition, walk, station)
    .filter((item) => {
      const reading = item.instrument === 'slot_taps' ? record.answers[answerId(station.id, definition, item)]?.reading : null
      return reading && !reading.taps && photosOf(record, walk, station, 'what').length > 0
    }).map((item) => ({ station, definition, item }))))
}

/** @param {{job: string, record: any, definitions: any[], walk: any, only?: string}} props `only`: of this station; nothing where none is left */
export function TapsToMake({ job, record, definitions, walk, only }) {
  const left = tapsToMake(record, definitions, walk).filter(({ station }) => !only || station.id === only)
  if (!left.length) return null
  return html`<${Part} name=${say('slot.taps_left', { n: left.length })}>
    <p class="hint">${say('slot.taps_left.why')}</p>
    <ul class="rows" data-name="taps-left">${left.map(({ station, definition, item }) => html`<li key=${station.id + item.id}>
      <a class="press tall" href=${path('job', job, 'item', 'station', station.id, definition.id, item.id)}><span class="label">${placeName(record, station)}</span><span class="go" aria-hidden="true">→</span></a></li>`)}</ul>
  <//>`
}
