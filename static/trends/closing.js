// How long each finding has been open, on one scale of days: the longest first, those still open hatched to the end.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { clock } from '../frame/age.js'
import { Part } from '../frame/screen.js'
import { lasting } from './lasting.js'
import { Span } from './span.js'

const FIRST = 6, FEW = 5
const STATES = ['open', 'corrected', 'closed', 'conceded', 'withdrawn']

/** @param {{job: string, record: any, definitions: any[], told: any}} props */
export function Closing({ job, record, definitions, told }) {
  const { findings, states, median, watched, late, unreadable, as_of: asOf } = told
  const longest = Math.max(1, ...findings.map((/** @type {any} */ one) => one.hours))
  const row = (/** @type {any} */ one) => html`<${Span} key=${one.id} ...${{ job, record, definitions, one, longest }} />`
  const rest = findings.slice(FIRST)
  return html`<${Part} name=${say('trends.closing')}>
    ${findings.length === 0 && html`<p>${say('trends.closing.none')}</p>`}
    ${findings.length > 0 && html`<p class="big" data-name="median">${median === null ? say('trends.closing.no_half') : `${say('trends.closing.half', { time: lasting(median), n: watched })}${watched < FEW ? ` ${say('trends.closing.few')}` : ''}`}</p>
      <p>${[...STATES.filter((state) => states[state]).map((state) => `${states[state]} ${say(`trends.state.${state}`)}`), late > 0 && say('trends.closing.late', { n: late }), unreadable.length > 0 && say('trends.closing.unreadable', { n: unreadable.length })].filter(Boolean).join(' · ')}</p>
      <p class="hint">${say('trends.closing.as_of', { at: clock(asOf) })}</p>
      <p class="curve-across trend-scale" aria-hidden="true"><span>0</span><span>${lasting(longest)}</span></p>
      <ol class="rows trend-rows">${findings.slice(0, FIRST).map(row)}</ol>
      ${rest.length > 0 && html`<details><summary class="press" data-name="more">${say('trends.closing.more', { n: rest.length })}</summary><ol class="rows trend-rows">${rest.map(row)}</ol></details>`}`}
  <//>`
}
