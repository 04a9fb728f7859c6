// What an audit is drawn over: the whole job or some areas, all their panels or a part; and what is asked at each place.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { useDraft } from '../frame/draft.js'
import { Choice } from '../frame/choice.js'
import { MainAction } from '../frame/main_action.js'
import { Part, Screen } from '../frame/screen.js'
import { Stepper } from '../frame/stepper.js'
import { sorted } from '../roof/order.js'
import { stretches } from '../roof/placed.js'
import { ask } from '../rules/ask.js'
import { auditSeries } from '../sync/tickets.js'
import { drawLot } from './draw_lot.js'
import { lotName } from './name.js'
import { population, size } from './population.js'
import { askedOf } from './seen.js'

const MAY = ['inspector', 'reviewer']

/** @param {{job: string, record: any, definitions: any[], person: any}} props */
export function NewAudit({ job, record, definitions, person }) {
  const key = `audit/${job}`
  const areas = sorted(record.areas, 'name').filter((one) => stretches(record.coverage?.[one.id]).length > 0)
  const [draft, change] = useDraft(person.id, key, { whole: 'job', areas: areas.map((one) => one.id), parts: {}, asks: 'seen' })
  const rows = draft ? population(record, draft.whole === 'job' ? areas.map((one) => one.id) : draft.areas, draft.whole === 'part' ? draft.parts : {}) : []
  const whole = size(rows)
  const plan = usePlan(record.job.sampling?.audit, whole)
  if (!draft) return null
  // One draw asks the same at all its places: clips and flanges have no open-leg questions in common.
  const mixed = draft.asks === 'open' && new Set(rows.map((row) => record.assemblies[record.areas[row.area].assembly]?.attachment)).size > 1
  const before = Object.values(record.lots ?? {}).filter((/** @type {any} */ one) => one.purpose === 'audit')
  const chosen = areas.filter((one) => draft.areas.includes(one.id))
  const toggle = (/** @type {string} */ id) => change((/** @type {any} */ now) => ({ areas: now.areas.includes(id) ? now.areas.filter((/** @type {string} */ one) => one !== id) : [...now.areas, id] }))
  const run = async () => {
    const lot = await drawLot({ job, record, definitions: askedOf(definitions, draft.asks), purpose: 'audit', crew: '', population: rows, series: await auditSeries(job), draft: key })
    go('job', job, 'audit', lot)
  }
  return html`<${Screen} title=${say('audit')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name}>
    <p class="big">${say('audit.what')}</p>
    ${before.map((/** @type {any} */ one) => html`<a key=${one.id} class="press tall" href=${path('job', job, 'audit', one.id)} data-name="audit-before"><span class="label">${lotName(record, one)}<span class="under">${one.day} · ${say(`lot.state.${one.decision.state}`)}</span></span><span class="go" aria-hidden="true">→</span></a>`)}
    ${areas.length === 0 && html`<p class="big">${say('audit.nothing_placed')}</p>`}
    ${areas.length > 0 && MAY.includes(person.role) && html`
      <${Choice} name="whole" label=${say('audit.over')} value=${draft.whole} onChange=${(/** @type {string} */ one) => change({ whole: one })}
        options=${['job', 'areas', 'part'].map((one) => ({ value: one, label: say(`audit.over.${one}`) }))} />
      ${draft.whole !== 'job' && html`<${Choice} many name="areas" label=${say('walk.areas')} value=${draft.areas} onChange=${toggle} options=${areas.map((one) => ({ value: one.id, label: one.name }))} />`}
      ${draft.whole === 'part' && chosen.map((area) => html`<${PartOf} key=${area.id} ...${{ record, area, part: draft.parts[area.id] }} put=${(/** @type {any} */ part) => change((/** @type {any} */ now) => ({ parts: { ...now.parts, [area.id]: part } }))} />`)}
      <${Choice} name="asks" label=${say('audit.asks')} value=${draft.asks} onChange=${(/** @type {string} */ asks) => change({ asks })}
        options=${['seen', 'open'].map((one) => ({ value: one, label: say(`audit.asks.${one}`), under: say(`audit.asks.${one}.means`) }))} />
      ${plan && html`<p class="figure-line" data-name="audit-plan">${say('audit.plan', { n: plan.n, size: whole })}</p>
        <p>${say('audit.plan.why', { ...record.job.sampling.audit, ...plan })}</p>`}
      <p class="hint">${say('audit.ticket.what')}</p>
      <${MainAction} name="draw-audit" label=${say('audit.draw')} under=${say(mixed ? 'audit.mixed' : 'audit.draw.under')} disabled=${whole === 0 || mixed} run=${run} />`}
    ${areas.length > 0 && !MAY.includes(person.role) && html`<p class="hint">${say('audit.by_inspector')}</p>`}
  <//>`
}

/** @param {{record: any, area: any, part: any, put: (part: any) => any}} props */
function PartOf({ record, area, part, put }) {
  const there = stretches(record.coverage[area.id])
  const low = there[0].from, high = /** @type {any} */ (there.at(-1)).to
  const now = { from: part?.from ?? low, to: part?.to ?? high }
  const step = (/** @type {'from' | 'to'} */ end) => html`<${Stepper} name=${`${end}-${area.id}`} label=${say(`walk.placed.${end}`)} value=${String(now[end])} steps=${[1, 10]} low=${low} high=${high}
    onChange=${(/** @type {string} */ value) => put({ ...now, [end]: Math.round(Number(value)) })} />`
  return html`<${Part} name=${area.name}>${step('from')}${step('to')}<//>`
}

/** What the audit's plan asks for in so many panels, from the rulebook. @param {any} by @param {number} lot */
function usePlan(by, lot) {
  const [plan, setPlan] = useState(/** @type {any} */ (null))
  useEffect(() => {
    let here = true
    if (!by || lot === 0) setPlan(null)
    else {
      ask({ call: 'judge', rule: 'plan', inputs: { lot, level: by.level, aql: by.aql, inspection: 'normal' } }).then(({ values }) => {
        if (here) setPlan(Object.fromEntries(Object.entries(values).map(([name, one]) => [name, /** @type {any} */ (one).value])))
      }, () => here && setPlan(null))
    }
    return () => { here = false }
  }, [by?.level, by?.aql, lot])
  return plan
}
