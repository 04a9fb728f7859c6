// The day: each crew's front, what is set, hold or go, the next stop one panel ahead, and what is set next in one tap.

import { html } from '../frame/view.js'
import { pick, say } from '../words/say.js'
import { path } from '../frame/route.js'
import { clock } from '../frame/age.js'
import { Part, Screen } from '../frame/screen.js'
import { DAY_WATCH } from '../checklist/applies.js'
import { lotWords } from './lot_words.js'
import { Care } from './care.js'
import { Front } from './front.js'
import { PlanDay } from './plan_day.js'
import { closedLots, openLots, reworked } from './standing.js'
import { openToday, walkToday } from './walk_today.js'

const PLAN = ['foreman', 'inspector']

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props */
export function Day({ job, record, definitions, person, rest }) {
  if (rest[0] === 'plan') return html`<${PlanDay} ...${{ job, record, definitions, person, rest }} />`
  const open = openLots(record, person).sort((a, b) => Number(b.id === rest[0]) - Number(a.id === rest[0]))
  const closed = closedLots(record)
  const drawing = Boolean(rest[0]) && !record.lots[rest[0]] // drawn a moment ago, and the record is being counted anew
  const unsigned = openToday(record, person)
  const walk = walkToday(record, definitions, person, DAY_WATCH)
  return html`<${Screen} title=${say('day')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name}>
    ${drawing && html`<p class="big" role="status" data-name="being-drawn">${say('opening')}</p>`}
    ${!drawing && open.length === 0 && html`<p class="big">${say('day.nothing')}</p>`}
    ${open.map((lot) => html`<${Front} key=${lot.id} ...${{ job, record, definitions, person, lot, walk }} />`)}
    ${!drawing && PLAN.includes(person.role) && html`<a class=${open.length ? 'press' : 'press main'} href=${path('job', job, 'day', 'plan')} data-name="plan-day"><span class="label">${say(open.length ? 'day.another' : 'plan_day')}</span></a>`}
    ${unsigned.length > 0 && html`<${Part} name=${say('day.unsigned')}>${unsigned.map((one) => html`<a key=${one.id} class="press tall" href=${path('job', job, 'walk', one.id)} data-name="unsigned">
      <span class="label">${pick(definitions.find((all) => all.digest === one.definition)?.title) ?? say('walk')}<span class="under">${say('walk.begun', { at: clock(one.at) })}</span></span></a>`)}<//>`}
    ${closed.length > 0 && html`<${Part} name=${say('day.closed')}>${closed.slice(0, 6).map((lot) => html`<a key=${lot.id} class="press tall" href=${path('job', job, 'lot', lot.id)} data-name="closed-lot">
      <span class="label">${lotWords(record, lot)}<span class="under">${lot.decision ? say(`day.decision.${lot.decision.state}`) : ''}${reworked(record, lot).map((one) => ` · ${say('day.after_rework', { decision: say(`day.decision.${one.decision?.state ?? 'open'}`) })}`).join('')}</span></span><span class="go" aria-hidden="true">→</span></a>`)}<//>`}
    <a class="press" href=${path('job', job, 'day-record')} data-name="day-records"><span class="label">${say('day_record.list')}</span><span class="go" aria-hidden="true">→</span></a>
    <${Care} />
  <//>`
}
