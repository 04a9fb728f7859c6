// The looks behind one number of the foreman's and the audit's agreement: both sides of each, and the way to them.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Screen } from '../frame/screen.js'
import { APART } from './agreement.js'

/** @param {{job: string, record: any, told: any, of: string, named: import('./named.js').Named}} props `of`: a cell, or why they were set apart */
export function Pairs({ job, record, told, of, named }) {
  const { pairs, apart } = told.agreement
  const aside = APART.includes(of)
  const shown = aside ? apart[of] : pairs.filter((/** @type {any} */ one) => one.cell === of)
  return html`<${Screen} title=${say(`trends.title.${of}`)} over=${say('trends.agreement')} back=${path('job', job, 'trends')} backTo=${say('trends')} wide>
    ${shown.length === 0 && html`<p class="big">${say('trends.pairs.none')}</p>`}
    <ul class="rows">${shown.map((/** @type {any} */ pair) => html`<li key=${[pair.area, pair.panel, pair.item].join('/')} class="stack trend-pair" data-name="pair">
      <h2>${named('area', pair.area)}, ${say('lot.panel', { panel: pair.panel })}</h2><p>${named('item', pair.item)} · ${pair.day}</p>
      <div class="rows beside">${['foreman', 'audit'].map((side) => html`<${Side} key=${side} ...${{ job, record, side, said: pair[side] }} />`)}</div></li>`)}</ul>
  <//>`
}

/** A way to each place that this side looked at. @param {{job: string, record: any, side: string, said: any}} props */
function Side({ job, record, side, said }) {
  const stations = [...new Set(said.answers.map((/** @type {string} */ id) => record.answers[id]?.station))]
  return stations.map((station, at) => html`<a key=${station} class="press" href=${path('job', job, 'station', station)} data-name=${`look-${side}`}>
    <span class=${said.result === 'bad' ? 'mark bad' : said.result === 'good' ? 'mark' : 'mark open'} aria-hidden="true">${said.result === 'bad' ? '✕' : said.result === 'good' ? '✓' : '?'}</span>
    <span class="label">${say(`trends.pair.${side}`, { result: say(`trends.pair.${said.result}`) })}${stations.length > 1 ? ` · ${at + 1}/${stations.length}` : ''}</span><span class="go" aria-hidden="true">→</span></a>`)
}
