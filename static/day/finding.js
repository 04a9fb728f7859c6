// What failed at a held panel: the question and where. Put right, it is looked at once more, as a look of its own: what was
// found stays found.

import { html, useState } from '../frame/view.js'
import { pick, say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Problem } from '../frame/problem.js'
import { findItem } from '../checklist/items.js'
import { MARKS, stateOf } from '../roof/state.js'
import { lookAt } from './look_at.js'
import { placeLine } from './place_line.js'

/** @param {{job: string, record: any, definitions: any[], walk: any, lot: any, answer: any, here: string[]}} props */
export function Finding({ job, record, definitions, walk, lot, answer, here }) {
  const [fault, setFault] = useState(/** @type {any} */ (null))
  const definition = definitions.find((one) => one.digest === answer.definition)
  const station = record.stations[answer.station]
  const again = () => { lookAt({ job, walk, lot, area: station.area, panel: station.panel, place: station, chosen: 'hand', reached: 'yes', here }).catch(setFault) }
  return html`<li class="stack"><a class="press tall fail" href=${path('job', job, 'station', station.id, ...here)} data-name="failed-place">
    <span class="mark fail" aria-hidden="true">✕</span>
    <span class="label">${pick(findItem(definition, answer.item)?.question) ?? answer.item}<span class="under">${placeLine(station)}${answer.note ? ` · “${answer.note}”` : ''}</span></span></a>
    ${looksSince(record, answer).map((one) => {
      const state = stateOf(record, definitions, one)
      return html`<a key=${one.id} class=${'press tall ' + state} href=${path('job', job, 'station', one.id, ...here)} data-name="looked-again"><span class=${'mark ' + state} aria-hidden="true">${MARKS[state]}</span>
        <span class="label">${say('failed.looked_again')}<span class="under">${say(`state.${state}`)}</span></span></a>`
    })}
    ${record.findings[answer.id] && html`<a class="press" href=${path('job', job, 'finding', answer.id)} data-name="to-finding"><span class="label">${say('finding.of_answer')}</span><span class="go" aria-hidden="true">→</span></a>`}
    <button type="button" class="press" data-name="look-again" onClick=${again}>${say('failed.again')}</button>
    <${Problem} fault=${fault} /></li>`
}

/** Looks at the same place after it failed. @param {any} record @param {any} answer @returns {any[]} */
export function looksSince(record, answer) {
  const place = record.stations[answer.station]
  const same = (/** @type {any} */ one) => one.area === place.area && one.panel === place.panel && one.from_low_end.value === place.from_low_end.value && one.from_low_end.unit === place.from_low_end.unit
  return Object.values(record.stations).filter((/** @type {any} */ one) => one.id !== place.id && same(one) && one.reached === 'yes' && Date.parse(one.at) > Date.parse(answer.at))
}
