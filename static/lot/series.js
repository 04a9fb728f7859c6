// A crew's lots of one assembly in the order they were made, and the inspection they led to.

import { html } from '../frame/view.js'
import { known, say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Part, Screen } from '../frame/screen.js'
import { Isolated } from './isolated.js'
import { SeriesStrip } from './series_strip.js'

/** @param {{job: string, record: any}} props */
export function Series({ job, record }) {
  const all = Object.keys(record.series ?? {}).sort().map((key) => ({ key, ...record.series[key] }))
  return html`<${Screen} title=${say('series')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name} wide>
    <p>${say('series.what')}</p>
    ${all.length === 0 && html`<p class="big">${say('series.none')}</p>`}
    ${all.map((one) => html`<${Part} key=${one.key} name=${one.crew || say('lot.no_crew')}>
      <p class="over">${record.assemblies[one.assembly]?.name ?? '—'}</p>
      <div class=${'standing-now ' + one.inspection} data-name="inspection" data-state=${one.inspection}>
        <p class="figure-line"><span aria-hidden="true">${STANDS[one.inspection]} </span>${say(`lot.inspection.${one.inspection}`)}</p>
        <p class="big">${because(one.because)}</p>
        <p>${say(`inspection.${one.inspection}.means`)}</p>
      </div>
      <${SeriesStrip} ...${{ job, series: one }} />
      <${Isolated} lots=${one.decided} />
    <//>`)}
    <p class="big">${say('series.stricter')}</p>
  <//>`
}

const STANDS = /** @type {Record<string, string>} */ ({ normal: '▐', tightened: '▐▐', reduced: '▗', stopped: '■' })

/** @param {any} reason of the switching rule */
function because(reason) {
  const key = `lot.series.because.${reason?.code ?? ''}`
  return known(key) ? say(key, reason.facts) : ''
}
