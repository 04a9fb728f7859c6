// One line that says whether a day's record is there, and leads to it. Nothing waits for it.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { usePeople } from '../frame/people.js'
import { path } from '../frame/route.js'
import { crewStep, dayOf, standingOf } from './there.js'

/** @param {{job: string, record: any, day: string, crew: string}} props */
export function DayRecordLine({ job, record, day, crew }) {
  const people = usePeople(job)
  const known = dayOf(record, day, crew)
  const there = Boolean(known?.entries.length)
  return html`<a class="press tall" href=${path('job', job, 'day-record', day, crewStep(crew))} data-name="day-record" data-there=${there ? 'yes' : 'no'}>
    <span class="label">${say('day_record.title')}<span class="under">${standingOf(known, people, record.partial)}${there ? '' : ` ${say('day_record.not_there.under')}`}</span></span><span class="go" aria-hidden="true">→</span></a>`
}
