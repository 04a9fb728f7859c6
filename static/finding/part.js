// Findings on the home of a job: how many are left to do, the first of them, and the way to all.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Part } from '../frame/screen.js'
import { findingsInOrder } from '../roof/order.js'
import { TO_DO } from './filter.js'
import { Row } from './row.js'

const FIRST = 3 // the gravest: the list of all is one press away
const GRAVE = ['critical', 'major', 'minor'] // a severity that nobody told counts as the gravest, as in closing it

/** @param {{job: string, record: any, definitions: any[]}} props */
export function FindingsPart({ job, record, definitions }) {
  const all = findingsInOrder(record)
  const grave = (/** @type {any} */ one) => GRAVE.indexOf(one.severity ?? 'critical')
  const due = all.filter((one) => TO_DO.includes(one.state)).sort((a, b) => grave(a) - grave(b)) // then as before, place by place
  const open = due.filter((one) => one.state === 'open').length
  return html`<${Part} name=${say('job.findings', { n: open })}>
    ${due.length === 0 ? html`<p>${say('job.no_findings')}</p>`
      : html`<ul class="rows">${due.slice(0, FIRST).map((finding) => html`<${Row} key=${finding.id} ...${{ job, record, definitions, finding }} />`)}</ul>`}
    <a class="press tall" href=${path('job', job, 'findings')} data-name="findings"><span class="label">${say('findings')}<span class="under">${say('findings.told', { open, corrected: due.length - open })}</span></span><span class="go" aria-hidden="true">→</span></a>
    <a class="press" href=${path('job', job, 'tomorrow')} data-name="tomorrow"><span class="label">${say('tomorrow')}</span><span class="go" aria-hidden="true">→</span></a>
  <//>`
}
