// The one plain place for all that is doubtful about a job's record, and for what is not in it.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { usePeople } from '../frame/people.js'
import { Part, Screen } from '../frame/screen.js'
import { Row } from './row.js'

/** @param {{job: string, record: any, person: any}} props */
export function Doubts({ job, record, person }) {
  const people = usePeople(job)
  const tiers = ['act', 'know'].map((tier) => ({ tier, of: record.doubts.filter((/** @type {any} */ one) => one.tier === tier) }))
  const decides = person.role === 'administrator'
  return html`<${Screen} title=${say('doubts')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name} wide>
    <p>${say('doubts.what')}</p>
    ${record.doubts.length === 0 && html`<p class="big" data-name="no-doubts">✓ ${say('doubts.none')}</p>`}
    ${tiers.map(({ tier, of }) => of.length > 0 && html`<${Part} key=${tier} name=${say(`doubts.${tier}`)}>
      <ul class="rows">${of.map((/** @type {any} */ doubt) => html`<${Row} key=${doubt.id} ...${{ job, record, people, doubt }} />`)}</ul>
    <//>`)}
    <${Part} name=${say('doubts.elsewhere')}>
      <a class="press tall" href=${path('unsent')} data-name="doubts-unsent"><span class="label">${say('doubts.unsent')}<span class="under">${say('doubts.unsent.under')}</span></span><span class="go" aria-hidden="true">→</span></a>
      <a class="press tall" href=${path('job', job, 'devices')} data-name="doubts-devices"><span class="label">${say('doubts.devices')}<span class="under">${say('doubts.devices.under')}</span></span><span class="go" aria-hidden="true">→</span></a>
      ${decides
        ? html`<a class="press tall" href=${path('job', job, 'apart')} data-name="doubts-apart"><span class="label">${say('doubts.apart')}<span class="under">${say('doubts.apart.means')}</span></span><span class="go" aria-hidden="true">→</span></a>`
        : html`<div class="row"><strong>${say('doubts.apart')}</strong><p class="line">${say('doubts.apart.means')} ${say('doubts.apart.ask')}</p></div>`}
    <//>
  <//>`
}
