// One doubt in a list: whether somebody has to act, and what happened.

import { html } from '../frame/view.js'
import { path } from '../frame/route.js'
import { told } from './told.js'

/** @param {{job: string, record: any, people: import('../frame/people.js').People, doubt: any}} props */
export function Row({ job, record, people, doubt }) {
  return html`<li class="stack"><a class=${`press tall doubt ${doubt.tier}`} href=${path('job', job, 'doubt', doubt.id)} data-name="doubt" data-code=${doubt.code}>
    <span class=${`mark ${doubt.tier}`} aria-hidden="true">${doubt.tier === 'act' ? '▲' : 'i'}</span>
    <span class="label">${told(record, people, doubt, 'what')}</span><span class="go" aria-hidden="true">→</span></a></li>`
}
