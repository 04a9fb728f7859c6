// One report: what it speaks of, whether it holds, and its sealed PDF.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { MainAction } from '../frame/main_action.js'
import { Screen } from '../frame/screen.js'
import { spelledHere } from '../frame/spelled.js'
import { useAsked } from '../office/asked.js'
import { Told } from '../office/told.js'
import { currentRow } from '../people/current.js'
import { refusal } from '../people/session.js'
import { callAs } from '../people/token.js'
import { about, kindName } from './name.js'
import { standing } from './standing.js'

/** @param {{job: string, record: any, definitions: any[], number: number}} props */
export function One({ job, record, definitions, number }) {
  const asked = useAsked(`/api/jobs/${job}/reports`, true)
  const title = say('sealed.number', { number })
  return html`<${Screen} title=${title} over=${record.job.name} back=${path('job', job, 'report')} backTo=${say('reports')}>
    <${Told} asked=${asked}>${(/** @type {any} */ { reports }) => {
      const one = reports.find((/** @type {any} */ each) => each.number === number)
      return one ? html`<${Facts} ...${{ job, record, definitions, one }} />` : html`<p class="big" data-name="no-such-report">${say('reports.none_of_number')}</p>`
    }}<//>
  <//>`
}

/** @param {{job: string, record: any, definitions: any[], one: any}} props */
function Facts({ job, record, definitions, one }) {
  const [url, setUrl] = useState('')
  const address = `/api/jobs/${job}/reports/${one.number}.pdf`
  const fetchIt = async () => {
    const reply = await callAs(await currentRow(), 'GET', address, { expect: 'bytes' })
    if (reply.status !== 200 || !reply.bytes) throw refusal('office.refused', 'report', String(one.number), reply)
    setUrl(URL.createObjectURL(new Blob([reply.bytes], { type: 'application/pdf' })))
  }
  const { mark, words, state } = standing(one)
  const named = about(record, definitions, one.scope)
  const rows = [['of', named], ['issued', one.issued && spelledHere(one.issued)], ['issuer', one.issuer], ['form', form(one)], ['bytes', size(one.size)]].filter(([, text]) => text)
  return html`
    <p class="big">${kindName(one.kind)}</p>
    <p class=${state === 'holds' ? '' : 'problem'} data-name="standing" data-state=${state}><strong><span aria-hidden="true">${mark}</span> ${words}</strong></p>
    ${one.superseded_by && html`<a class="press" href=${path('job', job, 'report', one.superseded_by)} data-name="newer"><span class="label">${say('sealed.number', { number: one.superseded_by })}</span><span class="go" aria-hidden="true">→</span></a>`}
    <ul class="rows">${rows.map(([name, text]) => html`<li key=${name} class="row"><span>${say(`reports.fact.${name}`)}</span> <strong>${text}</strong></li>`)}</ul>
    ${one.supersedes && html`<p>${say('reports.supersedes', { n: one.supersedes })}</p>`}
    <a class="press" href=${path('job', job, 'countersign', one.number)} data-name="signatures"><span class="label">${say('signing.see')}</span><span class="go" aria-hidden="true">→</span></a>
    <p class="hint">${say('sealed.limits')}</p>
    ${!url && html`<${MainAction} name="fetch-report" label=${say('sealed.fetch')} disabled=${state === 'lost'} run=${fetchIt} />`}
    ${url && html`<a class="press main" href=${url} download=${`seamwalk-report-${one.number}.pdf`} data-name="open-report"><span class="label">${say('sealed.open')}</span></a>`}`
}

/** @param {any} one */
function form({ language, paper, units }) {
  return [language && say(`reports.language.${language}`), paper && say(`reports.paper.${paper}`), units && say(`reports.units.${units}`)].filter(Boolean).join(' · ')
}

/** @param {number | null} bytes */
function size(bytes) {
  return bytes === null ? '' : `${(bytes / 1e6).toFixed(1)} MB`
}
