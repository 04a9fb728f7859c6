// One drawn panel and its drawn places: look at each, or say why not. None is replaced by an easier one.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { tape } from '../frame/tape.js'
import { lookAt } from '../day/look_at.js'
import { Lost } from '../frame/opening.js'
import { MainAction } from '../frame/main_action.js'
import { Part, Screen } from '../frame/screen.js'
import { zoneName } from '../roof/names.js'
import { MARKS, stateOf } from '../roof/state.js'

/** @param {{job: string, record: any, definitions: any[], lot: any, walk: any, area: string, panel: number}} props */
export function Place({ job, record, definitions, lot, walk, area, panel }) {
  const one = lot.drawn.find((/** @type {any} */ drawn) => drawn.area === area && drawn.panel === panel)
  if (!one) return html`<${Lost} />`
  const places = [...one.places].sort((/** @type {any} */ a, /** @type {any} */ b) => Number(a.from_low_end.value) - Number(b.from_low_end.value))
  const here = ['audit', lot.id, area, String(panel)]
  const put = (/** @type {any} */ place, /** @type {'yes' | 'unsafe' | 'covered'} */ reached) => () => lookAt({ job, walk, lot, area, panel, place, reached, here })
  return html`<${Screen} title=${say('lot.panel.title', { panel })} over=${record.areas[area]?.name} back=${path('job', job, 'audit', lot.id)} backTo=${say(`lot.purpose.${lot.purpose}`)}>
    <p class="hint">${say('audit.safe')}</p>
    ${!walk && html`<p class="problem"><strong>▲ ${say('audit.walk_first')}</strong></p>`}
    ${places.map((place) => {
      const station = place.station && record.stations[place.station]
      const state = station ? stateOf(record, definitions, station) : ''
      return html`<${Part} key=${place.index} name=${[say('place.from_low_end', { distance: tape(place.from_low_end) }), place.zone && zoneName(place.zone)].filter(Boolean).join(' · ')}>
        ${station
          ? html`<a class=${'press tall ' + state} href=${path('job', job, 'station', station.id, ...here)} data-name="drawn-place" data-state=${state}>
              <span class=${'mark ' + state} aria-hidden="true">${MARKS[state]}</span><span class="label">${say(`state.${state}`)}</span><span class="go" aria-hidden="true">→</span></a>`
          : walk && html`<${MainAction} name="look" label=${say('place.look')} run=${put(place, 'yes')} />
            <${MainAction} quiet name="unsafe" label=${say('place.unsafe')} run=${put(place, 'unsafe')} />
            <${MainAction} quiet name="covered" label=${say('audit.cannot_see')} run=${put(place, 'covered')} />`}
      <//>`
    })}
  <//>`
}
