// The way to what is doubtful: from the home of a job, and from the screen of a thing that some of it is about.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { usePeople } from '../frame/people.js'
import { Part } from '../frame/screen.js'
import { Row } from './row.js'

/** @param {{job: string, record: any}} props */
export function DoubtsPart({ job, record }) {
  const act = record.doubts.filter((/** @type {any} */ one) => one.tier === 'act').length
  const know = record.doubts.length - act
  return html`<a class=${act ? 'press tall doubt act' : 'press tall'} href=${path('job', job, 'doubts')} data-name="doubts" data-n=${record.doubts.length}>
    ${act > 0 && html`<span class="mark act" aria-hidden="true">▲</span>`}
    <span class="label">${say('doubts')}<span class="under">${act + know ? say('doubts.count', { act, know }) : '✓ ' + say('doubts.none')}</span></span><span class="go" aria-hidden="true">→</span></a>`
}

/** What is doubtful about one thing; nothing where nothing is. @param {{job: string, record: any, kind: string, id: string}} props `kind`: as in an entry's `about` */
export function DoubtsHere({ job, record, kind, id }) {
  const people = usePeople(job)
  const here = record.doubts.filter((/** @type {any} */ one) => one.tier === 'act' && one.entries.some((/** @type {any} */ entry) => entry.about?.[0] === kind && entry.about[1] === id))
  return here.length > 0 && html`<${Part} name=${say('doubt.here')}>
    <ul class="rows" data-name="doubts-here">${here.map((/** @type {any} */ doubt) => html`<${Row} key=${doubt.id} ...${{ job, record, people, doubt }} />`)}</ul>
  <//>`
}
