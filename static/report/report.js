// The report of a job: the server makes it when everything has arrived. Without signal this says so.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Screen } from '../frame/screen.js'
import { MainAction } from '../frame/main_action.js'
import { currentRow } from '../people/current.js'
import { callAs } from '../people/token.js'

/** @param {{job: string, record: any}} props */
export function Report({ job, record }) {
  const [known, setKnown] = useState(/** @type {any} */ (null))
  const [url, setUrl] = useState('')
  const ask = async () => {
    try {
      const reply = await callAs(await currentRow(), 'GET', `/api/jobs/${job}/report`)
      setKnown(reply.status === 200 ? reply.data : { state: reply.status === 403 ? 'part' : 'unknown' })
    } catch {
      setKnown({ state: 'no_signal' })
    }
  }
  useEffect(() => {
    ask()
    const timer = setInterval(ask, 5000)
    return () => clearInterval(timer)
  }, [])
  const fetchIt = async () => {
    const reply = await callAs(await currentRow(), 'GET', `/api/jobs/${job}/report.pdf`, { expect: 'bytes' })
    if (reply.status === 200 && reply.bytes) setUrl(URL.createObjectURL(new Blob([reply.bytes], { type: 'application/pdf' })))
  }
  const state = known?.state ?? 'asking'
  const missing = Array.isArray(known?.missing) ? known.missing.length : known?.missing ?? 0
  return html`<${Screen} title=${say('sealed.title')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name}>
    <p class="big" role="status" data-name="report-state" data-state=${state}>${say(`sealed.state.${state}`)}</p>
    ${state === 'ready' && known.number && html`<p data-name="report-number">${say('sealed.number', { number: known.number })}</p>`}
    ${missing > 0 && html`<p class="problem">▲ ${say('sealed.missing', { n: missing })}</p>`}
    ${state === 'ready' && !url && html`<${MainAction} name="fetch-report" label=${say('sealed.fetch')} run=${fetchIt} />`}
    ${url && html`<a class="press main" href=${url} download=${`seamwalk-report-${known?.number ?? ''}.pdf`} data-name="open-report"><span class="label">${say('sealed.open')}</span></a>`}
    <p class="hint">${say('sealed.limits')}</p>
  <//>`
}
