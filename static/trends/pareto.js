// What fails most, by what it has in common: one bar a group, the most frequent first. Each leads to its findings.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Choice } from '../frame/choice.js'
import { Part } from '../frame/screen.js'
import { percent } from '../lot/name.js'
import { Bar } from './bar.js'

const WAYS = ['item', 'area', 'zone', 'crew', 'firm', 'assembly']

/** @param {{job: string, told: any, by: string, choose: (by: string) => void, named: import('./named.js').Named}} props */
export function Pareto({ job, told, by, choose, named }) {
  const { n, withdrawn } = told
  return html`<${Part} name=${say('trends.pareto')}>
    <p>${n > 0 ? say('trends.pareto.n', { n }) : say('trends.pareto.none')}</p>
    ${n > 0 && html`<${Choice} name="by" label=${say('trends.by')} value=${by} onChange=${choose} options=${WAYS.map((value) => ({ value, label: say(`trends.by.${value}`) }))} />
    <p class="trend-heading">${say('trends.by')}: ${say(`trends.by.${by}`)}</p>
    <ol class="rows trend-rows" data-name="pareto" data-by=${by}>${told.by[by].map((/** @type {any} */ one) => html`<${Group} key=${one.key} ...${{ job, by, one, named }} />`)}</ol>
    <ul class="legend"><li><svg class="trend-key" width="34" height="20" aria-hidden="true"><rect class="trend-open" x="1" y="1" width="32" height="18" /></svg> ${say('trends.pareto.legend.open')}</li>
      <li><svg class="trend-key" width="34" height="20" aria-hidden="true"><rect class="trend-full" x="1" y="1" width="32" height="18" /></svg> ${say('trends.pareto.legend.settled')}</li>
      <li><svg class="trend-key" width="34" height="20" aria-hidden="true"><path class="trend-sum" transform="translate(17 -16)" d="M0 2V26M-9 34L0 22L9 34Z" /></svg> ${say('trends.pareto.legend.cumulative')}</li></ul>`}
    ${withdrawn.length > 0 && html`<a class="press" href=${path('job', job, 'trends', 'found', 'withdrawn')} data-name="withdrawn"><span class="label">${say('trends.pareto.withdrawn', { n: withdrawn.length })}</span><span class="go" aria-hidden="true">→</span></a>`}
  <//>`
}

/** @param {{job: string, by: string, one: any, named: import('./named.js').Named}} props */
function Group({ job, by, one, named }) {
  const facts = [say('trends.pareto.row', { n: one.n, share: percent(one.share), cumulative: percent(one.cumulative) }), one.open > 0 && say('trends.pareto.open', { n: one.open }), one.looks && say('trends.pareto.looks', { n: one.looks })]
  return html`<li><a class="press tall trend" href=${path('job', job, 'trends', 'found', by, `=${one.key}`)} data-name="group" data-key=${one.key} data-n=${one.n}>
    <span class="label">${named(by, one.key)}<span class="under">${facts.filter(Boolean).join(' · ')}</span></span><span class="go" aria-hidden="true">→</span>
    <${Bar} share=${one.share} open=${one.open / one.n} cumulative=${one.cumulative} /></a></li>`
}
