// Every report of a job, the newest first, and how far those are that somebody asked for. The office makes them; without
// signal this says so.

import { html, useEffect } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Screen } from '../frame/screen.js'
import { spelledHere } from '../frame/spelled.js'
import { useAsked } from '../office/asked.js'
import { Making } from './making.js'
import { about, kindName } from './name.js'
import { standing } from './standing.js'

const AGAIN = 3000 // ms: a report takes seconds

/** @param {{job: string, record: any, definitions: any[]}} props */
export function List({ job, record, definitions }) {
  const asked = useAsked(`/api/jobs/${job}/reports`, true)
  useEffect(() => {
    const timer = setInterval(asked.read, AGAIN)
    return () => clearInterval(timer)
  }, [job])
  const state = stateOf(asked)
  const reports = asked.data?.reports ?? []
  const made = asked.state === 'known' ? asked.data.asked : [] // how far something was before says nothing of now
  return html`<${Screen} title=${say('reports')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name}>
    <p class="big" role="status" data-name="report-state" data-state=${state}>${say(`sealed.state.${state}`)}</p>
    ${asked.state === 'no_signal' && asked.data && html`<p class="problem" data-name="as-of"><strong>▲ ${say('reports.as_of', { at: spelledHere(asked.at) })}</strong></p>`}
    ${made.map((/** @type {any} */ one) => html`<${Making} key=${one.id} one=${one} name=${kindName(one.kind)} under=${about(record, definitions, one.scope)} />`)}
    <ul class="rows" data-name="reports">${reports.map((/** @type {any} */ one) => html`<li key=${one.number}><${Row} ...${{ job, record, definitions, one }} /></li>`)}</ul>
    <p class="hint">${say('sealed.limits')}</p>
    ${state !== 'part' && html`<a class="press main" href=${path('job', job, 'report', 'new')} data-name="new-report"><span class="label">${say('reports.new')}</span><span class="under">${say('reports.new.under')}</span></a>`}
  <//>`
}

/** @param {{job: string, record: any, definitions: any[], one: any}} props */
function Row({ job, record, definitions, one }) {
  const { mark, words, state } = standing(one)
  const named = about(record, definitions, one.scope)
  return html`<a class="press tall" href=${path('job', job, 'report', one.number)} data-name="one-report" data-state=${state}>
    <span class="mark" aria-hidden="true">${mark}</span>
    <span class="label"><span data-name="report-number">${say('sealed.number', { number: one.number })}</span> · ${kindName(one.kind)}
      <span class="under">${named && named + ' · '}${one.issued ? spelledHere(one.issued) : ''} · ${words}</span></span><span class="go" aria-hidden="true">→</span></a>`
}

/** @param {import('../office/asked.js').Asked} asked */
function stateOf(asked) {
  if (asked.state === 'refused') return asked.fault?.facts?.status === 403 ? 'part' : 'unknown'
  if (asked.data === null) return asked.state === 'no_signal' ? 'no_signal' : 'asking'
  if (asked.state === 'no_signal') return 'no_signal'
  const made = asked.data.asked.some((/** @type {any} */ one) => one.state !== 'failed')
  if (made || asked.data.state === 'making') return 'making'
  return asked.data.reports.length ? 'ready' : asked.data.state === 'failed' ? 'failed' : 'none'
}
