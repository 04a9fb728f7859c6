// All findings of a job: what is still to be done first, and the rest by state, area and crew.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { Choice } from '../frame/choice.js'
import { Part, Screen } from '../frame/screen.js'
import { MAY_RAISE } from '../roof/findings_here.js'
import { findingsInOrder } from '../roof/order.js'
import { choices, fits, stepsOf, wantedBy } from './filter.js'
import { Row } from './row.js'

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props `rest`: what is wanted, as `wantedBy` reads it */
export function Findings({ job, record, definitions, person, rest }) {
  const all = findingsInOrder(record)
  const wanted = wantedBy(rest)
  const shown = all.filter((one) => fits(one, wanted))
  const { states, areas, crews } = choices(all, wanted)
  const want = (/** @type {string} */ name) => (/** @type {string} */ value) => go('job', job, 'findings', ...stepsOf({ ...wanted, [name]: value }))
  const option = (/** @type {(value: string) => string} */ name) => (/** @type {any} */ { value, n }) => ({ value, label: name(value), under: String(n) })
  return html`<${Screen} title=${say('findings')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name} wide>
    <p class="big" role="status" data-name="findings-told">${told(record, wanted, shown.length)}</p>
    ${all.length > 0 && html`<details class="filters"><summary class="press" data-name="filter">${say('findings.filter')}</summary>
      <${Choice} name="state" label=${say('findings.state')} value=${wanted.state} onChange=${want('state')} options=${states.map(option((value) => say(`findings.state.${value}`)))} />
      ${areas.length > 2 && html`<${Choice} name="area" label=${say('findings.area')} value=${wanted.area} onChange=${want('area')} options=${areas.map(option((value) => (value ? record.areas[value]?.name ?? '—' : say('findings.area.all'))))} />`}
      ${crews.length > 2 && html`<${Choice} name="crew" label=${say('findings.crew')} value=${wanted.crew} onChange=${want('crew')} options=${crews.map(option((value) => value || say('findings.crew.all')))} />`}
    </details>`}
    ${shown.length > 0 && html`<${Part} name=${say(`findings.state.${wanted.state}`)}><ul class="rows">${shown.map((finding) => html`<${Row} key=${finding.id} ...${{ job, record, definitions, finding }} />`)}</ul><//>`}
    ${MAY_RAISE.includes(person.role) && html`<a class="press" href=${path('job', job, 'new-finding', ...(wanted.area ? ['area', wanted.area] : []))} data-name="new-finding"><span class="label">${say('findings.new')}</span></a>`}
    <a class="press main" href=${path('job', job, 'tomorrow', ...(wanted.crew ? [wanted.crew] : []))} data-name="tomorrow"><span class="label">${say('tomorrow')}</span><span class="under">${say('tomorrow.under')}</span></a>
  <//>`
}

/** @param {any} record @param {import('./filter.js').Wanted} wanted @param {number} n */
function told(record, wanted, n) {
  const about = [wanted.area && (record.areas[wanted.area]?.name ?? '—'), wanted.crew].filter(Boolean).join(' · ')
  return `${n === 0 ? say('findings.none') : say('findings.n', { n })} · ${say(`findings.state.${wanted.state}`)}${about ? ` · ${about}` : ''}`
}
