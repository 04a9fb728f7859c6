// One doubt: what happened, what it means, what to do, and the signed entries that show it.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { clock } from '../frame/age.js'
import { path } from '../frame/route.js'
import { usePeople } from '../frame/people.js'
import { signed } from '../frame/signer.js'
import { Facts } from '../frame/facts.js'
import { Part, Screen } from '../frame/screen.js'
import { KeepOne, mayPick } from './keep_one.js'
import { opened, said, told } from './told.js'

/** @param {{job: string, record: any, person: any, rest: string[]}} props */
export function Doubt({ job, record, person, rest }) {
  const people = usePeople(job)
  const doubt = record.doubts.find((/** @type {any} */ one) => one.id === rest[0])
  const where = { over: record.job.name, back: path('job', job, 'doubts'), backTo: say('doubts') }
  if (!doubt) return html`<${Screen} title=${say('doubts')} ...${where}><p class="big" data-name="settled">✓ ${say('doubt.settled')}</p><//>`
  const opens = [...new Set(doubt.entries.map((/** @type {any} */ one) => opened(job, one.about)).filter(Boolean))]
  return html`<${Screen} title=${say('doubt.happened')} ...${where}>
    <p class="big" data-name="what"><span aria-hidden="true">${doubt.tier === 'act' ? '▲ ' : ''}</span>${told(record, people, doubt, 'what')}</p>
    <${Part} name=${say('doubt.meaning')}><p data-name="means">${told(record, people, doubt, 'means')}</p><//>
    <${Part} name=${say('doubt.to_do')}><p data-name="do">${told(record, people, doubt, 'do')}</p>
      ${opens.length === 1 && html`<a class="press main" href=${opens[0]} data-name="open"><span class="label">${say('doubt.open', { what: say(`kind.${doubt.entries[0].about[0]}`) })}</span></a>`}
    <//>
    <${Part} name=${say('doubt.proof')}>
      ${doubt.entries.length === 0 && html`<p>${say('doubt.no_entry')}</p>`}
      <ul class="rows">${doubt.entries.map((/** @type {any} */ one) => html`<${Entry} key=${one.digest} ...${{ job, people, one, alone: opens.length === 1 }}>
        ${mayPick(doubt, person) && html`<${KeepOne} ...${{ job, doubt, one, person }} />`}<//>`)}</ul>
      ${doubt.n > doubt.entries.length && doubt.entries.length > 0 && html`<p>${say('doubt.more', { n: doubt.n })}</p>`}
    <//>
  <//>`
}

/** @param {{job: string, people: import('../frame/people.js').People, one: any, alone: boolean, children?: any}} props `alone`: the screen has a press for it already */
function Entry({ job, people, one, alone, children }) {
  const to = alone ? null : opened(job, one.about)
  return html`<li class="row signed-entry" data-name="entry">
    <strong class="line">${say(`kind.${one.kind}`)} · ${signed(people, one) || say('doubt.nobody')}</strong>
    <span class="line">${say('doubt.by_phone', { at: clock(one.at) })}</span>
    <span class="line hint">${say('doubt.number', { seq: one.seq, key: one.kid.slice(0, 8) })} · ${say('doubt.digest', { digest: one.digest.slice(0, 12) })}</span>
    ${one.says.length > 0 && html`<div class="line"><${Facts} rows=${said(one.says)} /></div>`}
    ${to && html`<a class="press" href=${to} data-name="open-entry"><span class="label">${say('doubt.open', { what: say(`kind.${one.about[0]}`) })}</span><span class="go" aria-hidden="true">→</span></a>`}
    ${children}
  </li>`
}
