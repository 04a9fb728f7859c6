// The phones of a job's people: when each was last heard of, what is still only on it, and its end.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Screen } from '../frame/screen.js'
import { currentRow } from '../people/current.js'
import { useAsked } from './asked.js'
import { Device } from './device.js'
import { Told } from './told.js'

/** @param {{job: string, record: any, person: any}} props */
export function Devices({ job, record, person }) {
  const asked = useAsked(`/api/jobs/${job}/devices`)
  const [here, setHere] = useState(/** @type {string | null} */ (null))
  useEffect(() => { currentRow().then((row) => setHere(row?.kid ?? null)) }, [person.id])
  return html`<${Screen} title=${say('devices')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name} wide>
    <p>${say('devices.what')}</p>
    <${Told} asked=${asked}>${(/** @type {any[]} */ known) => html`
      <ul class="rows phones">${sorted(known).map((one) => html`<${Device} key=${one.kid} ...${{ job, one, here: one.kid === here, person, read: asked.read }} />`)}</ul>`}
    <//>
  <//>`
}

/** Those in force first, and of these whoever has waited longest to be heard of. @param {any[]} devices */
function sorted(devices) {
  const order = (/** @type {any} */ one) => `${one.revoked_at ? 1 : 0} ${one.last_contact ?? ''} ${one.kid}`
  return [...devices].sort((a, b) => (order(a) < order(b) ? -1 : 1))
}
