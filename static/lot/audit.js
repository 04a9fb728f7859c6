// The audit: without an address of a lot, what it is drawn over; with one, its drawn panels in walking order and, once
// looked at, how its findings compare with the foreman's.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { NotYet } from '../frame/opening.js'
import { Part, Screen } from '../frame/screen.js'
import { Compared } from './compared.js'
import { DECIDED } from './decided.js'
import { outcome, inWalkingOrder } from './drawn.js'
import { lotName, lotOver } from './name.js'
import { NewAudit } from './new_audit.js'
import { Place } from './places.js'
import { WalkOf, walkOf } from './walk_of.js'

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props */
export function Audit({ job, record, definitions, person, rest }) {
  if (!rest[0]) return html`<${NewAudit} ...${{ job, record, definitions, person }} />`
  const lot = record.lots?.[rest[0]]
  if (!lot) return html`<${NotYet} job=${job} />`
  const walk = walkOf(record, definitions, person, lot)
  if (rest[1]) return html`<${Place} ...${{ job, record, definitions, lot, walk, area: rest[1], panel: Number(rest[2]) }} />`
  return html`<${Screen} title=${say(`lot.purpose.${lot.purpose}`)} over=${lotName(record, lot)} back=${path('job', job)} backTo=${record.job.name} wide>
    <p class="big">${say('audit.drawn', { n: lot.n, size: lot.size, places: lot.places })}</p>
    <p>${lotOver(lot)} · ${say('audit.ticket', { ...lot.ticket, series: say(`audit.series.${lot.ticket.series}`) })}</p>
    <${WalkOf} ...${{ job, definitions, person, lot, walk }} />
    <${Part} name=${say('audit.panels')}>
      <ul class="rows beside">${inWalkingOrder(record, lot).map((one) => html`<${PanelRow} key=${one.order} ...${{ job, record, lot, one }} />`)}</ul>
    <//>
    <a class=${'press tall ' + lot.decision.state} href=${path('job', job, 'lot', lot.id)} data-name="lot" data-state=${lot.decision.state}>
      <span class=${'mark ' + lot.decision.state} aria-hidden="true">${DECIDED[lot.decision.state]}</span>
      <span class="label">${say(`lot.state.${lot.decision.state}`)}<span class="under">${say('audit.to_decision')}</span></span><span class="go" aria-hidden="true">→</span></a>
    ${lot.purpose === 'audit' && html`<${Compared} ...${{ record, lot }} />`}
  <//>`
}

const MARKS = /** @type {Record<string, string>} */ ({ good: '✓', bad: '✕', unknown: '?', part: '…', unsafe: '△', covered: '▬', next: '', due: '' })

/** @param {{job: string, record: any, lot: any, one: any}} props */
function PanelRow({ job, record, lot, one }) {
  const result = outcome(lot, one)
  const done = (one.places ?? []).filter((/** @type {any} */ place) => place.station).length
  return html`<li><a class=${'press tall ' + result} href=${path('job', job, 'audit', lot.id, one.area, one.panel)} data-name="audit-panel" data-state=${result} data-panel=${one.panel}>
    <span class=${'mark ' + result} aria-hidden="true">${MARKS[result] ?? ''}</span>
    <span class="label">${record.areas[one.area]?.name ?? '—'}, ${say('lot.panel', { panel: one.panel })}
      <span class="under">${done ? say('audit.places_done', { n: done, of: one.places.length }) + ' · ' : ''}${say(`audit.panel.${['next', 'due'].includes(result) ? 'to_look' : result}`)}</span></span>
    <span class="go" aria-hidden="true">→</span></a></li>`
}
