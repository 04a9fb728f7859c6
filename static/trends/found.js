// The findings behind one bar of the trends.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Screen } from '../frame/screen.js'
import { Row } from '../finding/row.js'

/** @param {{job: string, record: any, definitions: any[], told: any, by: string, of: string, named: import('./named.js').Named}} props `of`: the key after `=`, nothing more for what nobody told */
export function Found({ job, record, definitions, told, by, of, named }) {
  const key = (of ?? '').slice(1)
  const group = by === 'withdrawn' ? { findings: told.pareto.withdrawn } : told.pareto.by[by]?.find((/** @type {any} */ one) => one.key === key)
  const findings = (group?.findings ?? []).map((/** @type {string} */ id) => record.findings[id]).filter(Boolean)
  return html`<${Screen} title=${by === 'withdrawn' ? say('trends.state.withdrawn') : named(by, key)} over=${say(by === 'withdrawn' ? 'trends.pareto' : `trends.by.${by}`)} back=${path('job', job, 'trends')} backTo=${say('trends')} wide>
    <p class="big" data-name="found" data-n=${findings.length}>${findings.length ? say('findings.n', { n: findings.length }) : say('trends.pareto.none')}</p>
    <ul class="rows">${findings.map((/** @type {any} */ finding) => html`<${Row} key=${finding.id} ...${{ job, record, definitions, finding }} />`)}</ul>
  <//>`
}
