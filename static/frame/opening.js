// While a job's record is read, when an address leads nowhere, and when a screen broke.

import { html, useEffect, useState } from './view.js'
import { say } from '../words/say.js'
import { jobRecord } from '../record/load.js'
import { go, path } from './route.js'
import { Problem } from './problem.js'
import { Screen } from './screen.js'
import { MainAction } from './main_action.js'

const PATIENCE = 4000 // ms from a record with all that is saved to the screen that shows it

/** @param {{fault: any}} props */
export function Opening({ fault }) {
  return html`<${Screen} title=${say('opening')} back=${path()} backTo=${say('jobs')}><${Problem} fault=${fault} /><//>`
}

export function Lost() {
  return html`<${Screen} title=${say('lost')} back=${path()} backTo=${say('jobs')}><p>${say('lost.way_out')}</p><//>`
}

/** Waits for a record with all that is saved by now, however long this phone takes, before saying that a thing is not there. @param {{job: string}} props */
export function NotYet({ job }) {
  const [late, setLate] = useState(false)
  useEffect(() => {
    let here = true
    const later = () => setTimeout(() => here && setLate(true), PATIENCE)
    jobRecord(job).then(later, later)
    return () => { here = false }
  }, [])
  return late ? html`<${Lost} />` : html`<${Opening} fault=${null} />`
}

/** @param {{fault: any, mend: () => void, job: string}} props */
export function Broken({ fault, mend, job }) {
  const back = () => { go('job', job); mend() }
  return html`<${Screen} title=${say('broken')}>
    <p class="big">${say('broken.kept')}</p>
    <${MainAction} label=${say('broken.back')} run=${back} />
    <p class="hint">${String(fault?.message ?? fault)}</p>
  <//>`
}
