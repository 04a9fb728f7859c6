// The firms of a job, their people, who is invited, and what the person holding the phone may do here.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Part, Screen } from '../frame/screen.js'
import { areaNames } from './area_names.js'
import { Invitations } from './invitations.js'
import { Rights } from './rights.js'
import { Told } from './told.js'
import { useAsked } from './asked.js'

/** @param {{job: string, record: any, person: any}} props */
export function People({ job, record, person }) {
  const asked = useAsked(`/api/jobs/${job}/people`)
  return html`<${Screen} title=${say('people')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name} wide>
    <${Told} asked=${asked}>${(/** @type {any} */ known) => html`
      <div class="firms">
        ${known.firms.map((/** @type {any} */ firm) => html`<${Firm} key=${firm.id} ...${{ job, record, firm, me: person.id, invites: known.rights.invites }} />`)}
      </div>
      ${known.rights.invites && html`<${Invitations} job=${job} known=${known} read=${asked.read} />`}
      <${Rights} record=${record} rights=${known.rights} />
      ${known.rights.invites && html`<a class="press main" href=${path('job', job, 'firm')} data-name="add-firm"><span class="label">${say('people.add_firm')}</span><span class="under">${say('people.add_firm.under')}</span></a>`}`}
    <//>
  <//>`
}

/** @param {{job: string, record: any, firm: any, me: string, invites: boolean}} props `firm` without a name: members of none */
function Firm({ job, record, firm, me, invites }) {
  return html`<${Part} name=${firm.name || say('people.no_firm')}>
    ${firm.id && html`<p class="over" data-name="firm" data-side=${firm.side}>${say(`side.${firm.side}`)} · ${areaNames(record, firm.areas)}</p>`}
    ${firm.people.length === 0 && html`<p>${say('people.nobody_yet')}</p>`}
    <ul class="rows">${firm.people.map((/** @type {any} */ one) => html`<li key=${one.id} class="row" data-name="member">
      <strong>${one.name}</strong><span>${say(`role.${one.role}`)}${one.id === me ? ` · ${say('people.you')}` : ''}</span></li>`)}</ul>
    ${invites && firm.id && html`
      <a class="press" href=${path('job', job, 'invite', firm.id)} data-name="invite"><span class="label">${say('people.invite', { firm: firm.name })}</span></a>
      <a class="press" href=${path('job', job, 'firm', firm.id)} data-name="change-firm"><span class="label">${say('people.change_firm', { firm: firm.name })}</span></a>`}
  <//>`
}
