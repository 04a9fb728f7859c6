// On the home of a job: who takes part, their phones, what is kept apart, and the trail.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Part } from '../frame/screen.js'

/** @param {{job: string, person: any}} props */
export function OfficePart({ job, person }) {
  const names = person.role === 'administrator' ? ['people', 'reviewers', 'devices', 'apart', 'trail'] : ['people', 'devices']
  return html`<${Part} name=${say('office')}>
    ${names.map((name) => html`<a key=${name} class="press" href=${path('job', job, name)} data-name=${name}><span class="label">${say(name)}</span><span class="go" aria-hidden="true">→</span></a>`)}
  <//>`
}
