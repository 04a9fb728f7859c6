// Invitations made: open ones can be withdrawn, the others say how they ended.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Part } from '../frame/screen.js'
import { Problem } from '../frame/problem.js'
import { Twice } from '../frame/twice.js'
import { tell } from './asked.js'
import { MARKS } from './marks.js'
import { when } from './when.js'

/** @param {{job: string, known: any, read: () => Promise<void>}} props `known`: what the office told of the job's people */
export function Invitations({ job, known, read }) {
  const [fault, setFault] = useState(/** @type {any} */ (null))
  const firms = Object.fromEntries(known.firms.map((/** @type {any} */ one) => [one.id, one.name]))
  const withdraw = (/** @type {string} */ id) => () => tell('DELETE', `/api/jobs/${job}/invitations/${id}`).then(() => setFault(null), setFault).then(read)
  return html`<${Part} name=${say('invitations')}>
    ${known.invitations.length === 0 && html`<p>${say('invitations.none')}</p>`}
    <${Problem} fault=${fault} />
    <ul class="rows">${known.invitations.map((/** @type {any} */ one) => html`<li key=${one.id} class="row" data-name="invitation" data-state=${one.state}>
      <strong>${say(`role.${one.role}`)}, ${firms[one.firm] ?? ''}</strong>
      <span><span aria-hidden="true">${MARKS[one.state]}</span> ${say(`link.${one.state}`)}</span>
      <span class="hint">${say('link.made', { by: one.by, at: when(one.made_at) })} · ${say('link.until', { at: when(one.expires) })}</span>
      ${one.state === 'open' && html`<${Twice} name="withdraw-invitation" label=${say('link.withdraw')} ask=${say('invitations.withdraw.ask')} run=${withdraw(one.id)} />`}
    </li>`)}</ul>
  <//>`
}
