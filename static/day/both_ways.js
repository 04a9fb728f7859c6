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

/** @param {{job: string, record: any, definitions: any[], walk: any, lot: any, area: string, panel: number, here: string[], failed: any[], sides: any[]}} props `failed`: the answers that fail at this panel; `sides`: how far the good panels run, by the record */
export function BothWays({ job, record, definitions, walk, lot, area, panel, here, failed, sides }) {
  const [fault, setFault] = useState(/** @type {any} */ (null))
  const place = record.stations[failed[0]?.station]
  if (!place) return null
  const panels = Array.from({ length: 2 * FAR + 1 }, (_, at) => panel - FAR + at).filter((one) => one !== panel && one >= 1 && one <= (lot.placed_to ?? 0)) // what is not set has no leg
  const look = (/** @type {number} */ one, /** @type {'yes' | 'covered'} */ reached) => () =>
    lookAt({ job, walk, lot, area, panel: one, place, chosen: 'both_ways', reached, here })?.catch(setFault)
  return html`<${Part} name=${say('failed.both_ways')}>
    <p>${say('both_ways.how', { place: placeLine(place) })}</p>
    ${sides.map((one) => html`<p key=${one.severity} class="row" data-name="sides" data-bounded=${one.bounded}>${say('both_ways.running', { start: one.toward_start, end: one.toward_end })}</p>`)}
    ${sides.some((one) => !one.bounded) && html`<p class="hint">${say('both_ways.not_yet')}</p>`}
    <ul class="rows">${panels.map((one) => {
      const station = stationAt(record, area, one)
      const state = station && stateOf(record, definitions, station)
      return html`<li key=${one} class="stack" data-name="both-ways" data-panel=${one}>${station
        ? html`<a class=${'press tall ' + state} href=${path('job', job, 'station', station.id, ...here)}>
          <span class=${'mark ' + state} aria-hidden="true">${MARKS[state]}</span><span class="label">${say('day.panel', { panel: one })}<span class="under">${say(`state.${state}`)}</span></span></a>`
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
