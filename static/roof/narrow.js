// An area of others, seen only where a finding or an own entry is: those places, and why there is no more.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Part, Screen } from '../frame/screen.js'
import { FindingsHere } from './findings_here.js'
import { Legend } from './legend.js'
import { Plan } from './plan.js'
import { PlaceList } from './place_list.js'

/** @param {{job: string, record: any, definitions: any[], person: any, area: any}} props */
export function NarrowPart({ job, record, definitions, person, area }) {
  const there = Object.values(record.stations).some((/** @type {any} */ one) => one.area === area.id)
  return html`<p class="statement" data-name="narrow">${say('area.narrow')}</p>
    ${there && html`<${PlaceList} ...${{ job, record, definitions }} wanted=${(/** @type {any} */ one) => one.area === area.id} />`}
    <${FindingsHere} ...${{ job, record, person, area }} />`
}

/** Its screen. @param {{job: string, record: any, definitions: any[], person: any, area: any}} props */
export function NarrowArea({ job, record, definitions, person, area }) {
  return html`<${Screen} title=${area.name} over=${record.assemblies[area.assembly]?.name} back=${path('job', job)} backTo=${record.job.name} wide>
    <${Part} name=${say('area.narrow.places')}><${NarrowPart} ...${{ job, record, definitions, person, area }} /><//>
    <${Plan} ...${{ record, definitions, area }} tallest=${Math.max(320, innerHeight * 0.55)} />
    <${Legend} />
    <a class="press tall" href=${path('job', job, 'card', area.id)} data-name="card"><span class="label">${say('card')}</span><span class="go" aria-hidden="true">→</span></a>
    <a class="press tall" href=${path('job', job, 'plan', area.id)} data-name="plan"><span class="label">${say('plan')}</span><span class="go" aria-hidden="true">→</span></a>
  <//>`
}
