// What was seen of an area before it was hidden, panel by panel; of the whole job on one page. Nothing is made up and
// nothing left out: what was covered unseen comes first, in the figures and in words.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Lost } from '../frame/opening.js'
import { Part, Screen } from '../frame/screen.js'
import { sorted } from '../roof/order.js'
import { CoverageBar } from './coverage_bar.js'
import { MARKS, figures, panels } from './states.js'
import { Unseen } from './unseen.js'

/** @param {{job: string, record: any, rest: string[]}} props */
export function Coverage({ job, record, rest }) {
  if (!rest[0]) return html`<${WholeJob} ...${{ job, record }} />`
  const area = record.areas[rest[0]]
  if (!area) return html`<${Lost} />`
  const coverage = record.coverage?.[area.id] ?? { runs: [], counts: {} }
  return html`<${Screen} title=${say('coverage')} over=${area.name} back=${path('job', job, 'coverage')} backTo=${say('coverage.job')} wide>
    <${Unseen} ...${{ record, areas: [area] }} />
    <${CoverageBar} ...${{ area, coverage }} />
    <${Figures} counts=${coverage.counts} whole=${coverage.panels} />
    <${Part} name=${say('coverage.runs')}>
      ${coverage.runs.length === 0 && html`<p>${say('coverage.nothing')}</p>`}
      <ul class="runs">${coverage.runs.map((/** @type {any} */ run) => html`<li key=${run.from} class=${'run ' + run.state} data-name="run" data-state=${run.state}>
        <span class=${'mark ' + run.state} aria-hidden="true">${MARKS[run.state]}</span>
        <strong>${panels(run)}</strong> <span>${say(`coverage.${run.state}`)}</span></li>`)}</ul>
    <//>
    <p class="hint">${say('coverage.what')}</p>
  <//>`
}

/** @param {{job: string, record: any}} props */
function WholeJob({ job, record }) {
  const areas = sorted(record.areas, 'name').filter((one) => !one.narrow)
  return html`<${Screen} title=${say('coverage.job')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name} wide>
    <${Unseen} ...${{ record, areas }} />
    ${areas.length > 0 && html`<${Part} name=${say('job.roof')}><div class="roof">${areas.map((area) => {
      const coverage = record.coverage?.[area.id] ?? { runs: [], counts: {} }
      return html`<a key=${area.id} class="bay" href=${path('job', job, 'coverage', area.id)} data-name="coverage-area">
        <h3>${area.name}</h3>
        <${CoverageBar} ...${{ area, coverage }} />
        <${Figures} counts=${coverage.counts} whole=${coverage.panels} />
      </a>`
    })}</div><//>`}
    ${areas.length === 0 && html`<p class="big">${say('coverage.nothing')}</p>`}
    <p class="hint">${say('coverage.what')}</p>
  <//>`
}

/** @param {{counts: Record<string, number>, whole: number | null | undefined}} props */
function Figures({ counts, whole }) {
  return html`<ul class="tallies" data-name="figures">
    ${whole !== null && whole !== undefined && html`<li class="whole"><strong>${whole}</strong> <span>${say('coverage.panels', { n: whole })}</span></li>`}
    ${figures(counts).map(([state, n]) => html`<li key=${state} data-state=${state} class=${state}>
      <span class=${'mark ' + state} aria-hidden="true">${MARKS[state]}</span> <strong>${n}</strong> <span>${say(`coverage.${state}`)}</span></li>`)}
  </ul>`
}
