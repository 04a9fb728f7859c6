// The panels that were drawn, one by one: looked at, good or not, or why not looked at. None is ever replaced.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { SEVERITIES } from './name.js'
import { UnseenPlaces } from './unseen_places.js'

const MARKS = /** @type {Record<string, string>} */ ({ good: '✓', bad: '✕', unknown: '?', not_attended: '◇', covered: '▬', unsafe: '△', dropped: '–', part: '?', next: '→', due: '→', sealed: '▒' })

/** Outcomes of which every place not seen is named. */
const NAMED = ['bad', 'unknown', 'part', 'covered', 'unsafe', 'not_attended']

/** Panels by area and number; those still sealed last, in the order of the draw. @param {any} record @param {any} lot @returns {any[]} */
export function inWalkingOrder(record, lot) {
  const name = (/** @type {any} */ one) => record.areas[one.area]?.name ?? ''
  const shown = lot.drawn.filter((/** @type {any} */ one) => one.panel !== undefined).sort((/** @type {any} */ a, /** @type {any} */ b) => name(a).localeCompare(name(b), undefined, { numeric: true }) || a.panel - b.panel)
  return [...shown, ...lot.drawn.filter((/** @type {any} */ one) => one.panel === undefined)]
}

/** The worst of what was found on a drawn panel, else its state; what a closed lot never set dropped out. @param {any} lot @param {any} one of `drawn` @returns {string} */
export function outcome(lot, one) {
  if (lot.closed && ['sealed', 'next'].includes(one.state) && lot.purpose === 'work') return 'dropped'
  if (SEVERITIES.some((name) => one.results?.[name] === 'bad')) return 'bad'
  if (one.state !== 'looked') return one.state
  return SEVERITIES.some((name) => one.results?.[name] === 'unknown') ? 'unknown' : 'good'
}

/** @param {{job: string, record: any, lot: any}} props */
export function Drawn({ job, record, lot }) {
  const all = inWalkingOrder(record, lot)
  const several = new Set(lot.population.map((/** @type {any} */ row) => row.area)).size > 1
  const sealed = all.filter((one) => one.panel === undefined && !lot.closed).length
  return html`<div class="stack" data-name="drawn">
    <div class="ribs drawn-ribs" aria-hidden="true">${all.map((one) => html`<span key=${one.order} class=${'rib ' + RIBS[outcome(lot, one)]} />`)}</div>
    <ul class="rows beside">${all.filter((one) => one.panel !== undefined).map((one) => {
      const result = outcome(lot, one)
      return html`<li key=${one.order} class=${'drawn-panel ' + RIBS[result]} data-name="drawn-panel" data-state=${result}>
        <span class=${'mark ' + result} aria-hidden="true">${MARKS[result]}</span>
        <div><strong>${several ? `${record.areas[one.area]?.name ?? '—'}, ` : ''}${say('lot.panel', { panel: one.panel })}</strong>: ${say(`drawn.${result}`)}
          ${result === 'bad' && html`<br />${SEVERITIES.filter((name) => one.results[name] === 'bad').map((name) => say(`drawn.bad.${name}`)).join(', ')}`}
          ${NAMED.includes(result) && html`<${UnseenPlaces} places=${one.places ?? []} />`}
          <div>${(one.places ?? []).filter((/** @type {any} */ place) => place.station && record.stations[place.station]).map((/** @type {any} */ place, /** @type {number} */ at) => html`<a key=${place.station} class="press" href=${path('job', job, 'station', place.station, 'lot', lot.id)} data-name="drawn-place">${say('drawn.place', { n: at + 1 })} →</a>`)}</div>
        </div></li>`
    })}</ul>
    ${sealed > 0 && html`<p>${say('drawn.sealed', { n: sealed })}</p>`}
  </div>`
}

/** How a rib stands for what it stands for. */
const RIBS = /** @type {Record<string, string>} */ ({ good: 'pass', bad: 'fail', unknown: 'too_close', part: 'too_close' , not_attended: 'not_determinable', covered: 'not_determinable',
  unsafe: 'not_determinable', dropped: 'absent', next: 'absent', due: 'absent', sealed: 'absent' })
