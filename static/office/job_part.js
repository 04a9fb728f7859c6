// On the home of a job: who takes part, their phones, what is kept apart, the evidence package, and the trail.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Folded } from '../frame/folded.js'
import { jobs } from '../record/load.js'

/** @param {{job: string, person: any}} props */
export function OfficePart({ job, person }) {
  const [overdue, setOverdue] = useState(0)
  useEffect(() => {
    const read = () => jobs().then((known) => setOverdue(known.find(({ id }) => id === job)?.overdue ?? 0))
    read()
    addEventListener('seamwalk:sync', read)
    return () => removeEventListener('seamwalk:sync', read)
  }, [job])
  const names = person.role === 'administrator' ? ['people', 'reviewers', 'devices', 'apart', 'bring', 'package', 'trail'] : ['people', 'devices', 'package']
  return html`<${Folded} id="office" name=${say('office')} n=${names.length}>
    ${names.map((name) => html`<a key=${name} class="press" href=${path('job', job, name)} data-name=${name}><span class="label">${say(name)}${name === 'devices' && overdue > 0 ? html`<span class="under" data-name="overdue"><strong>${say('overdue', { n: overdue })}</strong></span>` : ''}</span><span class="go" aria-hidden="true">→</span></a>`)}
  <//>`
}
