// The days of the job, crew by crew, newest first: which have their record, which were without work, which wait for one.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { today } from '../frame/today.js'
import { usePeople } from '../frame/people.js'
import { Part, Screen } from '../frame/screen.js'
import { Choice } from '../frame/choice.js'
import { MainAction } from '../frame/main_action.js'
import { TextField } from '../frame/text_field.js'
import { crewsOf, crewStep, mayWrite, standingOf } from './there.js'

const OTHER = '\n' // no crew is called so

/** @param {{job: string, record: any, person: any}} props */
export function DayRecords({ job, record, person }) {
  const crews = crewsOf(record)
  const [crew, setCrew] = useState(crews[0] ?? OTHER)
  const [named, setNamed] = useState('')
  const [day, setDay] = useState(today())
  const chosen = crew === OTHER ? named.trim() : crew
  const people = usePeople(job)
  const days = [...(record.days ?? [])].reverse()
  return html`<${Screen} title=${say('day_record.list')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name}>
    ${mayWrite(person) && html`${crews.length > 0 && html`<${Choice} name="record-crew" label=${say('walk.crew')} value=${crew} onChange=${setCrew} options=${[...crews.map((one) => ({ value: one, label: one })), { value: OTHER, label: say('plan_day.other_crew') }]} />`}
    ${crew === OTHER && html`<${TextField} name="record-crew-name" label=${say('walk.crew')} value=${named} onChange=${setNamed} />`}
    <${TextField} name="record-day" type="date" label=${say('plan_day.date')} value=${day} onChange=${setDay} />
    <${MainAction} name="write-day" label=${say(day === today() ? 'day_record.today' : 'day_record.open')} disabled=${!chosen || !day} under=${chosen ? (day ? `${day} · ${chosen}` : say('day_record.needs.day')) : say('day_record.needs.crew')} run=${() => go('job', job, 'day-record', day, crewStep(chosen))} />`}
    <${Part} name=${say('day_record.versions')}>
      ${days.length === 0 && html`<p>${say('day_record.list.none')}</p>`}
      ${days.map((/** @type {any} */ one) => html`<a key=${one.day + one.crew} class="press tall" href=${path('job', job, 'day-record', one.day, crewStep(one.crew))} data-name="record-of" data-there=${one.entries.length ? 'yes' : 'no'}>
        <span class="label">${one.day} · ${one.crew || say('day_record.no_crew')}<span class="under">${standingOf(one, people, record.partial)}</span></span><span class="go" aria-hidden="true">→</span></a>`)}
    <//>
  <//>`
}
