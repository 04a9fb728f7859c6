// The trail of a job: who saw, exported, invited, revoked, let in, and when; newest first.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { MainAction } from '../frame/main_action.js'
import { Screen } from '../frame/screen.js'
import { tell, useAsked } from './asked.js'
import { stepWords } from './step_words.js'
import { Told } from './told.js'
import { when } from './when.js'

const PAGE = 200 // the office tells so many at a time

/** @param {{job: string, record: any}} props */
export function Trail({ job, record }) {
  const asked = useAsked(`/api/jobs/${job}/trail`)
  const people = useAsked(`/api/jobs/${job}/people`)
  const [older, setOlder] = useState(/** @type {any[]} */ ([]))
  useEffect(() => setOlder([]), [asked.data])
  const steps = [...(asked.data ?? []), ...older]
  const more = steps.length > 0 && steps.length % PAGE === 0
  const read = async () => setOlder([...older, ...await tell('GET', `/api/jobs/${job}/trail?before=${steps.at(-1).seq}`)])
  const names = Object.fromEntries((people.data?.firms ?? []).flatMap((/** @type {any} */ firm) => firm.people).map((/** @type {any} */ one) => [one.id, one.name]))
  return html`<${Screen} title=${say('trail')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name} wide>
    <p>${say('trail.is')}</p>
    <${Told} asked=${asked}>${() => html`
      ${steps.length === 0 && html`<p class="big">${say('trail.none')}</p>`}
      <ol class="rows trail">${steps.map((one) => html`<li key=${one.seq} class="row" data-name="step" data-what=${one.what}>
        <span class="at">${when(one.at)}</span><strong>${one.who ?? say('trail.by_link')}</strong><span>${stepWords(one, names)}</span></li>`)}</ol>
      ${more && html`<${MainAction} quiet name="older" label=${say('trail.older')} run=${read} />`}`}
    <//>
  <//>`
}
