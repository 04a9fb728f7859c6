// While a job's record is read, when an address leads nowhere, and when a screen broke.

import { html, useEffect, useState } from './view.js'
import { say } from '../words/say.js'
import { go, path } from './route.js'
import { Problem } from './problem.js'
import { Screen } from './screen.js'
import { MainAction } from './main_action.js'

const PATIENCE = 4000 // ms for a thing just saved to be in the record that is shown

/** @param {{fault: any}} props */
export function Opening({ fault }) {
  return html`<${Screen} title=${say('opening')} back=${path()} backTo=${say('jobs')}><${Problem} fault=${fault} /><//>`
}

export function Lost() {
  return html`<${Screen} title=${say('lost')} back=${path()} backTo=${say('jobs')}><p>${say('lost.way_out')}</p><//>`
}

/** Waits for a thing to come into the record before saying that it is not there. */
export function NotYet() {
  const [late, setLate] = useState(false)
  useEffect(() => {
    const timer = setTimeout(() => setLate(true), PATIENCE)
    return () => clearTimeout(timer)
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
