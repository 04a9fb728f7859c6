// One signed statement of a place's chronicle: when, what, by whom, where, with what result.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { number } from '../words/number.js'
import { path } from '../frame/route.js'
import { spelled } from '../frame/spelled.js'

const OPENS = /** @type {Record<string, string>} */ ({ walk: 'walk', signoff: 'walk', station: 'station', area: 'area', fit: 'area', assembly: 'approved', lot: 'lot', disposition: 'lot',
  answer: 'finding', finding: 'finding', correction: 'finding', recheck: 'finding', reopening: 'finding', assignment: 'finding', concession: 'finding' })
const RESULTS = ['fail', 'too_close', 'not_determinable', 'pass', 'not_applicable']
const AT_IT = 0.05 // of the unit: no tape tells it from the place itself

/** @param {{job: string, record: any, people: Record<string, {name: string}>, event: any, unit: string}} props */
export function Event({ job, record, people, event, unit }) {
  const target = OPENS[event.kind]
  const there = target === 'finding' ? record.findings[event.id] : target
  const told = html`<strong>${say(`survey.class.${event.class}`)}: ${say(`survey.event.${event.kind}`)}</strong>
    <span class="under">${spelled(event.at)}${event.clock ? ` · ${say('survey.clock')}` : ''} · ${people[event.by]?.name ?? event.by}</span>
    <span class="under">${where(record, event, unit)}</span>
    ${result(event) && html`<span class="under">${result(event)}</span>`}
    ${!event.stands && html`<span class="under">${say('survey.replaced')}</span>`}`
  return html`<li data-name="survey-event" data-kind=${event.kind}>${there && event.stands
    ? html`<a class="press tall" href=${path('job', job, target, event.id)} data-name="open-event"><span class="label">${told}</span><span class="go" aria-hidden="true">→</span></a>`
    : html`<div class="statement stack">${told}</div>`}</li>`
}

/** @param {any} record @param {any} event @param {string} unit */
function where(record, event, unit) {
  if (event.how === 'job') return say('survey.how.job')
  const apart = event.distance === null ? '' : event.distance < AT_IT ? say('survey.how.place') : say('survey.apart', { distance: number(event.distance, unit, 1) })
  const name = event.area ? record.areas[event.area]?.name ?? '' : ''
  const panel = event.panel === null ? '' : `${say('survey.member.panel')} ${event.panel}`
  const how = ['unplaced', 'beside'].includes(event.how) || !name ? say(`survey.how.${event.how}`) : ''
  return [name, panel, apart, how].filter(Boolean).join(' · ')
}

/** @param {any} event */
function result(event) {
  const counted = RESULTS.filter((name) => event.results[name]).map((name) => `${event.results[name]} ${say(`result.${name}`)}`)
  return [...counted, event.result ? say(`result.${event.result}`) : '', event.photos.length ? say('survey.photos', { n: event.photos.length }) : ''].filter(Boolean).join(' · ')
}
