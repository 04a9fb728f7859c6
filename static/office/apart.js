// What came from a revoked phone is kept apart, whole, until a named person lets it in and says why.

import { html, useEffect } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Screen } from '../frame/screen.js'
import { useAsked } from './asked.js'
import { KeptApart } from './kept_apart.js'
import { Told } from './told.js'

/** @param {{job: string, record: any, person: any}} props */
export function Apart({ job, record, person }) {
  const asked = useAsked(`/api/jobs/${job}/quarantine`)
  // An admission arrives with the sending; what it let in is then no longer here.
  useEffect(() => {
    /** @type {ReturnType<typeof setTimeout> | undefined} */
    let soon
    const again = () => { clearTimeout(soon); soon = setTimeout(asked.read, 500) }
    addEventListener('seamwalk:sync', again)
    return () => { clearTimeout(soon); removeEventListener('seamwalk:sync', again) }
  }, [job])
  return html`<${Screen} title=${say('apart')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name} wide>
    <p>${say('apart.what')}</p>
    <${Told} asked=${asked}>${(/** @type {any[]} */ known) => html`
      ${known.length === 0 ? html`<p class="big">✓ ${say('apart.none')}</p>` : html`<p class="big">▲ ${say('apart.some', { n: known.length })}</p>`}
      ${byPerson(known).map((of) => html`<${KeptApart} key=${of[0].by} ...${{ job, of, person }} />`)}`}
    <//>
  <//>`
}

/** @param {any[]} entries in order of arrival @returns {any[][]} each person's, in that order */
function byPerson(entries) {
  /** @type {Map<string, any[]>} */
  const groups = new Map()
  for (const one of entries) groups.set(one.by, [...(groups.get(one.by) ?? []), one])
  return [...groups.values()]
}
