// One roof area: the drawing to pick a panel on, its facts, and every place on it as a list.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { shown } from '../frame/amount.js'
import { Part, Screen } from '../frame/screen.js'
import { Facts } from '../frame/facts.js'
import { DoubtsHere } from '../doubt/part.js'
import { Plan } from './plan.js'
import { Legend } from './legend.js'
import { PlaceList } from './place_list.js'
import { zoneName } from './names.js'
import { edges } from './shape.js'
import { FindingsHere } from './findings_here.js'
import { fitted } from './fitted.js'
import { useLaid } from './layouts.js'
import { NarrowArea } from './narrow.js'
import { Tally } from './tally.js'

const LOOKERS = ['foreman', 'inspector', 'reviewer'] // nobody else's walk counts

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props */
export function Area({ job, record, definitions, person, rest }) {
  const area = record.areas[rest[0]]
  return area.narrow ? html`<${NarrowArea} ...${{ job, record, definitions, person, area }} />` : html`<${WholeArea} ...${{ job, record, definitions, person, area }} />`
}

/** @param {{job: string, record: any, definitions: any[], person: any, area: any}} props */
function WholeArea({ job, record, definitions, person, area }) {
  const assembly = record.assemblies[area.assembly]
  const walk = Object.values(record.walks).find((/** @type {any} */ one) => !one.signoff && one.by === person.id && one.areas.includes(area.id))
  const fixed = area.fixed_line
  const fit = fitted(record, area)
  const layouts = useLaid('layout', record, [area])
  return html`<${Screen} title=${area.name} over=${assembly?.name} back=${path('job', job)} backTo=${record.job.name} wide>
    <${Plan} ...${{ record, definitions, area }} tallest=${Math.max(320, innerHeight * 0.55)} />
    <${Legend} />
    ${walk
      ? html`<a class="press main" href=${path('job', job, 'place', /** @type {any} */ (walk).id, area.id)} data-name="new-place"><span class="label">${say('walk.new_place')}</span></a>`
      : LOOKERS.includes(person.role) && html`<a class="press main" href=${path('job', job, 'start')}><span class="label">${say('job.start')}</span></a>`}
    <a class=${'press tall ' + fit.result} href=${path('job', job, 'fit', area.id)} data-name="fit">
      ${fit.mark && html`<span class=${'mark ' + fit.result} aria-hidden="true">${fit.mark}</span>`}
      <span class="label">${say('fit')}<span class="under">${fit.text}</span></span><span class="go" aria-hidden="true">→</span></a>
    <a class="press tall" href=${path('job', job, 'card', area.id)} data-name="card"><span class="label">${say('card')}</span><span class="go" aria-hidden="true">→</span></a>
    <a class="press tall" href=${path('job', job, 'plan', area.id)} data-name="plan"><span class="label">${say('plan')}</span><span class="go" aria-hidden="true">→</span></a>
    <${DoubtsHere} ...${{ job, record }} kind="area" id=${area.id} />
    <${Part} name=${say('plan.counts')}><${Tally} layout=${area.id in layouts ? layouts[area.id] : undefined} ...${{ assembly, area }} /><//>
    <${Part} name=${say('area.places_list')}>
      <${PlaceList} ...${{ job, record, definitions }} wanted=${(/** @type {any} */ one) => one.area === area.id} />
      <${FindingsHere} ...${{ job, record, person, area }} />
    <//>
    <${Part} name=${say('area.facts')}>
      <${Facts} rows=${[
        [say('area.panels.name'), String(area.panel_count ?? '—')],
        [say('area.length'), shown(area.panel_length)],
        [say('area.coverage'), shown(area.coverage ?? assembly?.coverage)],
        [say('area.slope'), shown(area.slope)],
        [say('fixed_line'), fixed ? say('area.fixed', { distance: shown(fixed.from_low_end), by: fixed.by }) + (fixed.fasteners ? ` · ${say('area.fixed.fasteners', { n: fixed.fasteners })}` : '') : say('area.fixed.unknown')],
        [say('area.edges'), [...new Set(edges(area).map((edge) => edge.name))].map((name) => say(`edge.${name}`)).join(', ')],
        [say('area.zones'), (area.zones ?? []).map(zoneName).join(', ')],
      ]} />
      ${['administrator', 'inspector', 'foreman'].includes(person.role) && html`<a class="press" href=${path('job', job, 'draw', area.id)} data-name="draw-again">${say('plan.redraw')}</a>`}
      ${assembly && html`<a class="press" href=${path('job', job, 'approved', assembly.id)}>${say('job.approved')}</a>`}
    <//>
  <//>`
}
