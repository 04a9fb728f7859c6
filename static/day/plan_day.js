// Plan the day: area, crew, panels from-to. Then the stops are drawn by a ticket nobody chose, and sealed.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { today } from '../frame/today.js'
import { useDraft } from '../frame/draft.js'
import { useAreasGiven } from '../frame/areas_given.js'
import { Screen } from '../frame/screen.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { TextField } from '../frame/text_field.js'
import { MainAction } from '../frame/main_action.js'
import { sorted } from '../roof/order.js'
import { nextTicket } from '../outbox/ticket.js'
import { asked, blankPlan, knownCrews, nextPanels } from './blank_plan.js'
import { useCalledFor } from './called_for.js'
import { drawDay } from './draw_day.js'

const OTHER = '\n' // no crew is called so

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props `rest`: `plan`, then the lot whose plan goes on */
export function PlanDay({ job, record, definitions, person, rest }) {
  const lot = record.lots?.[rest[1]] ?? null
  const key = `plan/${job}/${lot?.id ?? 'new'}`
  const [draft, change] = useDraft(person.id, key, blankPlan(record, person, lot, today()))
  const ticket = useTicketThere(job)
  const given = useAreasGiven(job)
  const state = useCalledFor(record, draft?.crew ?? '', draft?.area ?? '', draft?.day ?? '')
  if (!draft || ticket === undefined) return null
  const { proposed, choices } = asked(state)
  const inspection = choices.includes(draft.inspection) ? draft.inspection : proposed
  const count = record.areas[draft.area]?.panel_count ?? 999
  const crews = knownCrews(record)
  const turned = draft.from !== null && draft.to !== null && draft.from > draft.to
  const ready = draft.area && draft.crew.trim() && draft.from !== null && draft.to !== null && !turned && draft.day
  const end = (/** @type {'from' | 'to'} */ name) => ({ name, steps: [1, 5], low: 1, high: count, value: draft[name] === null ? null : String(draft[name]),
    label: say(`plan_day.${name}`), onChange: (/** @type {string} */ value) => change({ [name]: Math.round(Number(value)) }), onWrong: () => change({ [name]: null }) })
  const draw = async () => {
    const made = await drawDay({ job, record, definitions, ...draft, inspection: inspection === proposed ? undefined : inspection, extending: lot?.id, draft: key })
    go('job', job, 'day', lot?.id ?? made)
  }
  return html`<${Screen} title=${say(lot ? 'plan_day.further' : 'plan_day')} over=${lot ? `${record.areas[draft.area]?.name} · ${lot.crew}` : record.job.name} back=${path('job', job, 'day')} backTo=${say('day')}>
    ${!ticket && html`<div class="problem" role="alert" data-name="no-ticket"><strong>▲ ${say('plan_day.no_ticket')}</strong><p>${say('plan_day.no_ticket.way_out')}</p></div>`}
    ${!lot && Object.keys(record.areas).length > 1 && html`<${Choice} name="plan-area" label=${say('walk.areas.one')} value=${draft.area}
      onChange=${(/** @type {string} */ area) => change({ area, ...nextPanels(record, person, area) })} options=${sorted(record.areas, 'name').map((one) => ({ value: one.id, label: one.name }))} />`}
    ${given && draft.area && !given.includes(draft.area) && html`<div class="problem" role="alert" data-name="area-in-part"><strong>▲ ${say('plan_day.in_part')}</strong><p>${say('plan_day.in_part.way_out')}</p></div>`}
    ${!lot && crews.length > 0 && html`<${Choice} name="plan-crew" label=${say('walk.crew')} value=${draft.other ? OTHER : draft.crew}
      onChange=${(/** @type {string} */ crew) => change(crew === OTHER ? { other: true, crew: '' } : { other: false, crew })}
      options=${[...crews.map((crew) => ({ value: crew, label: crew })), { value: OTHER, label: say('plan_day.other_crew') }]} />`}
    ${!lot && draft.other && html`<${TextField} name="crew" label=${say(crews.length ? 'plan_day.crew_name' : 'walk.crew')} value=${draft.crew} onChange=${(/** @type {string} */ crew) => change({ crew })} />`}
    <${Stepper} ...${end('from')} />
    <${Stepper} ...${end('to')} />
    ${turned && html`<p class="problem" role="alert"><strong>▲ ${say('walk.placed.order')}</strong></p>`}
    ${!lot && html`<${TextField} name="day" type="date" label=${say('plan_day.date')} value=${draft.day} onChange=${(/** @type {string} */ day) => change({ day })} />`}
    ${!lot && draft.day && draft.day !== today() && html`<p class="problem" role="alert" data-name="other-day"><strong>▲ ${say('plan_day.other_day', { day: draft.day, today: today() })}</strong></p>`}
    ${state === 'stopped' && html`<p class="problem" role="alert"><strong>▲ ${say('plan_day.stopped')}</strong></p>`}
    ${choices.length > 1 ? html`<${Choice} name="inspection" label=${say('plan_day.inspection')} hint=${say('plan_day.stricter')} value=${inspection} onChange=${(/** @type {string} */ one) => change({ inspection: one })}
      options=${choices.map((one) => ({ value: one, label: say(`inspection.${one}`), under: one === proposed ? say('plan_day.proposed') : undefined }))} />`
      : html`<p data-name="inspection" data-value=${inspection}><strong>${say(`inspection.${inspection}`)}</strong>: ${say('plan_day.proposed')}</p>`}
    <${MainAction} name="draw" label=${say('plan_day.draw')} under=${ready ? say('plan_day.draw.under', { n: draft.to - draft.from + 1 }) : say('plan_day.still')} disabled=${!ready || !ticket} run=${draw} />
    <p class="hint">${say('plan_day.how')}</p>
  <//>`
}

/** Whether the phone holds a ticket for this job; undefined until it is known. @param {string} job @returns {boolean | undefined} */
function useTicketThere(job) {
  const [there, setThere] = useState(/** @type {boolean | undefined} */ (undefined))
  useEffect(() => {
    const look = () => { nextTicket(job, 'work').then((one) => setThere(Boolean(one)), () => setThere(false)) }
    look()
    addEventListener('seamwalk:sync', look)
    return () => removeEventListener('seamwalk:sync', look)
  }, [job])
  return there
}
