// The station sheet: the pair of pictures, what a glance can answer, what is measured.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Screen } from '../frame/screen.js'
import { DoubtsHere } from '../doubt/part.js'
import { placeParts } from '../roof/names.js'
import { MARKS, stateOf } from '../roof/state.js'
import { forStation } from '../checklist/applies.js'
import { Pair } from './pair.js'
import { Sheet } from './sheet.js'
import { TapsToMake } from './taps_to_make.js'

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props */
export function Station({ job, record, definitions, person, rest }) {
  const station = record.stations[rest[0]]
  const walk = record.walks[station.walk]
  const [panel, distance, zone] = placeParts(station)
  const locked = Boolean(walk.signoff) || walk.by !== person.id
  const state = stateOf(record, definitions, station)
  const then = rest.slice(1) // a drawn place leads back to its stop, any other to its walk
  const back = then.length ? path('job', job, ...then) : path('job', job, 'walk', walk.id)
  const fitting = forStation(record, definitions, station)
  return html`<${Screen} title=${panel} over=${record.areas[station.area].name} back=${back} backTo=${say(then.length ? 'back' : 'walk')}>
    <p class="figure-line">${distance}</p>
    <p class="big">${zone} · <span class=${'mark ' + state} aria-hidden="true">${MARKS[state]}</span> ${say(`state.${state}`)}</p>
    ${station.reached === 'yes' && html`
      <${Pair} ...${{ job, record, walk, station, person, locked }} />
      ${!locked && html`<${TapsToMake} ...${{ job, record, definitions, walk }} only=${station.id} />`}
      ${fitting.length === 0 && html`<p class="problem"><strong>▲ ${say('station.no_definition')}</strong></p>`}
      ${fitting.map((definition) => html`<${Sheet} key=${definition.id} ...${{ job, record, definition, walk, person, station, locked, then }} />`)}`}
    <${DoubtsHere} ...${{ job, record }} kind="station" id=${station.id} />
    <a class="press main plain" href=${back} data-name="back-to-walk"><span class="label">${say(then.length ? 'station.back_there' : 'station.back')}</span></a>
  <//>`
}
