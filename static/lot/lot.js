// A lot: what was decided, from what, and what the decision cannot see; then what is done with it.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Facts } from '../frame/facts.js'
import { Part, Screen } from '../frame/screen.js'
import { Decided } from './decided.js'
import { Choose, Chosen } from './disposition.js'
import { Drawn } from './drawn.js'
import { GoneOver } from './holds.js'
import { SEVERITIES, lotName, lotOver } from './name.js'
import { Rework } from './rework.js'
import { ofTheLot, said } from './says.js'
import { Severity } from './severity.js'
import { ToDate } from './to_date.js'

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props */
export function Lot({ job, record, definitions, person, rest }) {
  const lot = record.lots[rest[0]]
  const { state, lot: of } = lot.decision
  const bad = state === 'not_accepted' || state === 'not_determinable'
  const before = lot.reworks && record.lots[lot.reworks]
  const back = lot.purpose === 'work' ? { to: path('job', job, 'day'), name: say('lot.day') } : { to: path('job', job, 'audit', lot.id), name: say(`lot.purpose.${lot.purpose}`) }
  return html`<${Screen} title=${lotName(record, lot)} over=${lotOver(lot)} back=${back.to} backTo=${back.name} wide>
    <${Decided} lot=${lot} />
    ${before && html`<a class="press tall" href=${path('job', job, 'lot', before.id)} data-name="before"><span class="label">${say('lot.reworks')}<span class="under">${lotName(record, before)} · ${before.day}</span></span><span class="go" aria-hidden="true">→</span></a>`}
    ${lot.disposition && html`<${Chosen} ...${{ job, lot }} />`}
    ${bad && html`<${Rework} ...${{ job, record, definitions, person, lot }} />`}
    <${Part} name=${say('lot.sample')}>
      <${Facts} rows=${[[say('lot.planned'), String(of.planned)], [say('lot.placed'), String(of.placed)], [say('lot.drawn'), String(of.drawn)],
        [say('lot.looked'), String(of.looked)], [say('lot.nonresponse'), String(of.nonresponse)], [say('lot.dropped'), String(of.dropped)]]} />
      <${Drawn} ...${{ job, record, lot }} />
      ${ofTheLot(lot).sample.map(said).map((text) => html`<p key=${text}>${text}</p>`)}
    <//>
    <div class="severities">${SEVERITIES.map((name) => html`<${Severity} key=${name} ...${{ lot, name }} />`)}</div>
    <${Part} name=${say('to_date')}><${ToDate} record=${record} /><//>
    ${ofTheLot(lot).series.map(said).map((text) => html`<p key=${text} class="statement" data-name="isolated">${text}</p>`)}
    <${Part} name=${say('lot.holds')}><${GoneOver} lot=${lot} /><//>
    ${bad && html`<${Part} name=${say('lot.disposition')} id="disposition">
      ${!['administrator', 'engineer'].includes(person.role) ? html`<p>${say('disposition.by_office')}</p>`
        : lot.disposition ? html`<details><summary class="press" data-name="again">${say('disposition.again')}</summary><${Choose} ...${{ job, lot, person }} /></details>`
          : html`<${Choose} ...${{ job, lot, person }} />`}
    <//>`}
    <p class="small">${say('not_the_engineer')}</p>
  <//>`
}
