// Links for who only reads: one job, until a day, counted and withdrawn here.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { useDraft } from '../frame/draft.js'
import { Choice } from '../frame/choice.js'
import { MainAction } from '../frame/main_action.js'
import { Part, Screen } from '../frame/screen.js'
import { Problem } from '../frame/problem.js'
import { TextField } from '../frame/text_field.js'
import { Twice } from '../frame/twice.js'
import { tell, useAsked } from './asked.js'
import { DAYS } from './days.js'
import { GivenLink } from './given_link.js'
import { MARKS } from './marks.js'
import { Told } from './told.js'
import { when } from './when.js'

/** @param {{job: string, record: any, person: any}} props */
export function Reviewers({ job, record, person }) {
  const asked = useAsked(`/api/jobs/${job}/people`)
  const [fault, setFault] = useState(/** @type {any} */ (null))
  const withdraw = (/** @type {string} */ id) => () => tell('DELETE', `/api/jobs/${job}/links/${id}`).then(() => setFault(null), setFault).then(asked.read)
  return html`<${Screen} title=${say('reviewers')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name}>
    <p>${say('reviewers.what')}</p>
    <${Told} asked=${asked}>${(/** @type {any} */ known) => html`
      <${Problem} fault=${fault} />
      ${known.links.length === 0 && html`<p class="big">${say(known.rights.links ? 'reviewers.none' : 'reviewers.by_administrator')}</p>`}
      <ul class="rows">${known.links.map((/** @type {any} */ one) => html`<li key=${one.id} class="row" data-name="reviewer" data-state=${one.state}>
        <strong>${one.name}</strong>
        <span><span aria-hidden="true">${MARKS[one.state]}</span> ${say(`link.${one.state}`)} · ${one.seen ? say('reviewers.seen', { n: one.seen }) : say('reviewers.unseen')}</span>
        <span class="hint">${say('reviewers.by', { by: one.by })} · ${say('link.until', { at: when(one.expires) })}</span>
        ${one.state === 'open' && html`<${Twice} name="withdraw-link" label=${say('link.withdraw')} ask=${say('reviewers.withdraw.ask', { name: one.name })} run=${withdraw(one.id)} />`}
      </li>`)}</ul>
      ${known.rights.links && html`<${Part} name=${say('reviewers.new')}><${Form} ...${{ job, person, read: asked.read }} /><//>`}`}
    <//>
  <//>`
}

/** @param {{job: string, person: any, read: () => Promise<void>}} props */
function Form({ job, person, read }) {
  const [draft, change, drop] = useDraft(person.id, `office-link/${job}`, { name: '', days: '30' })
  const [made, setMade] = useState(/** @type {any} */ (null))
  if (!draft) return null
  const run = async () => {
    const name = draft.name.trim()
    const given = await tell('POST', `/api/jobs/${job}/links`, { name, days: Number(draft.days) })
    setMade({ ...given, what: say('reviewers.made', { name }) })
    await drop()
    await read()
  }
  if (made) return html`<${GivenLink} given=${made} once=${say('reviewers.once')} /><button type="button" class="press main" data-name="link-given" onClick=${() => setMade(null)}><span class="label">${say('link.given')}</span></button>`
  return html`
    <${TextField} name="reviewer-name" label=${say('reviewers.name')} hint=${say('reviewers.name.hint')} value=${draft.name} onChange=${(/** @type {string} */ name) => change({ name })} />
    <${Choice} name="days" label=${say('reviewers.days')} value=${draft.days} onChange=${(/** @type {string} */ days) => change({ days })}
      options=${DAYS.map((n) => ({ value: String(n), label: say('days', { n }) }))} />
    <${MainAction} name="make-link" label=${say('reviewers.make')} under=${draft.name.trim() ? '' : say('reviewers.wants_name')} disabled=${!draft.name.trim()} run=${run} />`
}
