// One crew's day: what was written of it, and by whom; else the sheet to write it.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Part, Screen } from '../frame/screen.js'
import { DayRecords } from './days.js'
import { Known } from './known.js'
import { DayTold } from './told.js'
import { crewStep, dayOf, mayWrite, ownEntry } from './there.js'
import { Write } from './write.js'

/** @param {{job: string, record: any, person: any, rest: string[]}} props `rest`: nothing, or the day, the crew behind a tilde, and perhaps `write` */
export function DayRecord({ job, record, person, rest }) {
  const [day, step = '~', writing] = rest
  if (!day) return html`<${DayRecords} ...${{ job, record, person }} />`
  const crew = step.slice(1)
  const known = dayOf(record, day, crew)
  const own = ownEntry(known, person)
  if (mayWrite(person) && (writing || !known?.entries.length)) return html`<${Write} ...${{ job, record, person, day, crew }} old=${own} />`
  const there = path('job', job, 'day-record', day, crewStep(crew), 'write')
  return html`<${Screen} title=${say('day_record.title')} over=${`${day} · ${crew || say('day_record.no_crew')}`} back=${path('job', job, 'day-record')} backTo=${say('day_record.list')}>
    <${Part} name=${say('day_record.versions')}>${!known?.entries.length && html`<p>${say('day_record.not_there')}</p>`}
      ${(known?.entries ?? []).map((/** @type {any} */ entry) => html`<${DayTold} key=${entry.digest} ...${{ job, record, entry }} />`)}<//>
    <${Known} ...${{ record, known }} />
    ${mayWrite(person) && html`<a class="press main plain" href=${there} data-name=${own ? 'correct-day' : 'write-beside'}><span class="label">${say(own ? 'day_record.correct' : 'day_record.beside')}</span></a>`}
  <//>`
}
