// Both ways from where something failed: the panels before and after, at the same distance, until three running are good.
// Whether they are is the record's to say.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Part } from '../frame/screen.js'
import { Problem } from '../frame/problem.js'
import { MARKS, stateOf } from '../roof/state.js'
import { lookAt } from './look_at.js'
import { placeLine } from './place_line.js'

const FAR = 3

/** @param {{job: string, record: any, definitions: any[], walk: any, lot: any, area: string, panel: number, here: string[], failed: any[]}} props `failed`: the answers that fail at this panel */
export function BothWays({ job, record, definitions, walk, lot, area, panel, here, failed }) {
  const [fault, setFault] = useState(/** @type {any} */ (null))
  const place = record.stations[failed[0]?.station]
  if (!place) return null
  const last = record.areas[area]?.panel_count ?? panel + FAR
  const panels = [-3, -2, -1, 1, 2, 3].map((step) => panel + step).filter((one) => one >= 1 && one <= last)
  const look = (/** @type {number} */ one, /** @type {'yes' | 'covered'} */ reached) => () =>
    lookAt({ job, walk, lot, area, panel: one, place, chosen: 'both_ways', reached, here })?.catch(setFault)
  return html`<${Part} name=${say('failed.both_ways')}>
    <p>${say('both_ways.how', { place: placeLine(place) })}</p>
    <ul class="rows">${panels.map((one) => {
      const station = stationAt(record, area, one)
      const state = station && stateOf(record, definitions, station)
      return html`<li key=${one} class="stack" data-name="both-ways" data-panel=${one}>${station
        ? html`<a class=${'press tall ' + state} href=${path('job', job, 'station', station.id, ...here)}><span class=${'mark ' + state} aria-hidden="true">${MARKS[state]}</span><span class="label">${say('day.panel', { panel: one })}<span class="under">${say(`state.${state}`)}</span></span></a>`
        : html`<h3>${say('day.panel', { panel: one })}</h3><div class="ways"><button type="button" class="press" data-name="both-ways-look" onClick=${look(one, 'yes')}>${say('place.look')}</button>
          ${walk && html`<button type="button" class="press" data-name="both-ways-covered" onClick=${look(one, 'covered')}>${say('stop.covered')}</button>`}</div>`}</li>`
    })}</ul>
    <${Problem} fault=${fault} />
  <//>`
}

/** What was looked at both ways on a panel, the newest. @param {any} record @param {string} area @param {number} panel @returns {any} */
function stationAt(record, area, panel) {
  return Object.values(record.stations).filter((/** @type {any} */ one) => one.area === area && one.panel === panel && one.chosen === 'both_ways').sort((/** @type {any} */ a, /** @type {any} */ b) => (a.at < b.at ? -1 : 1)).at(-1)
}
