// Invite one person to a firm of the job: a link and its code, shown once.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { useDraft } from '../frame/draft.js'
import { Choice } from '../frame/choice.js'
import { MainAction } from '../frame/main_action.js'
import { Screen } from '../frame/screen.js'
import { tell, useAsked } from './asked.js'
import { DAYS } from './days.js'
import { GivenLink } from './given_link.js'
import { Told } from './told.js'

const ROLES = ['foreman', 'inspector', 'reviewer', 'administrator', 'engineer', 'owner']

/** @param {{job: string, record: any, person: any, rest: string[]}} props `rest`: the firm's id */
export function Invite({ job, record, person, rest }) {
  const asked = useAsked(`/api/jobs/${job}/people`)
  const firm = asked.data?.firms.find((/** @type {any} */ one) => one.id === rest[0])
  return html`<${Screen} title=${say('invite')} over=${firm?.name ?? record.job.name} back=${path('job', job, 'people')} backTo=${say('people')}>
    <${Told} asked=${asked}>${() => (firm ? html`<${Form} ...${{ job, person, firm }} />` : html`<p class="problem">▲ ${say('firm.gone')}</p>`)}<//>
  <//>`
}

/** @param {{job: string, person: any, firm: any}} props */
function Form({ job, person, firm }) {
  const [draft, change, drop] = useDraft(person.id, `office-invite/${job}/${firm.id}`, { role: '', days: '7' })
  const [made, setMade] = useState(/** @type {any} */ (null))
  if (!draft) return null
  const run = async () => {
    const given = await tell('POST', `/api/jobs/${job}/invitations`, { firm: firm.id, role: draft.role, days: Number(draft.days) })
    setMade({ ...given, what: say('invite.made', { role: say(`role.${draft.role}`), firm: firm.name }) })
    await drop()
  }
  if (made) return html`<${GivenLink} given=${made} once=${say('invite.once')} /><a class="press main" href=${path('job', job, 'people')} data-name="link-given"><span class="label">${say('link.given')}</span></a>`
  // Who sees only some areas cannot run the whole job.
  const roles = ROLES.filter((one) => firm.areas === null || one !== 'administrator')
  return html`
    <${Choice} name="role" label=${say('invite.role')} value=${draft.role} onChange=${(/** @type {string} */ role) => change({ role })}
      options=${roles.map((one) => ({ value: one, label: say(`role.${one}`), under: say(`role.${one}.does`) }))} />
    <${Choice} name="days" label=${say('invite.days')} value=${draft.days} onChange=${(/** @type {string} */ days) => change({ days })}
      options=${DAYS.map((n) => ({ value: String(n), label: say('days', { n }) }))} />
    <${MainAction} name="make-invitation" label=${say('invite.make')} under=${draft.role ? say('invite.make.under') : say('invite.wants_role')} disabled=${!draft.role} run=${run} />`
}
