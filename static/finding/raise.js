// A finding that no checklist asks for, written down by whoever sees it: where, what is required, what is there.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { enterCounted } from '../frame/enter.js'
import { useDraft } from '../frame/draft.js'
import { quantity } from '../frame/amount.js'
import { uuid7 } from '../entry/uuid7.js'
import { Part, Screen } from '../frame/screen.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { TextField } from '../frame/text_field.js'
import { MainAction } from '../frame/main_action.js'
import { sorted } from '../roof/order.js'
import { NO_SHOTS, Shots } from './shots.js'
import { from } from './raised_from.js'

const SEVERITIES = ['critical', 'major', 'minor']

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props `rest`: where it was begun, as `raised_from.js` reads it */
export function Raise({ job, record, person, rest }) {
  const begun = from(record, rest)
  const key = `finding/${job}/${rest.join('/')}`
  const [draft, change] = useDraft(person.id, key, { id: uuid7(), area: begun.area ?? '', panel: begun.panel, at: null, severity: '', required: '', found: '', ...NO_SHOTS })
  if (!draft) return null
  const put = (/** @type {string} */ name) => (/** @type {any} */ value) => change({ [name]: value })
  const areas = sorted(record.areas, 'name').filter((one) => !begun.areas || begun.areas.includes(one.id))
  const area = record.areas[draft.area]
  const unit = area?.outline.unit
  const needs = ['severity', 'found', 'required'].filter((name) => !draft[name].trim())
  const run = async () => {
    await enterCounted({ job, kind: 'finding', subject: draft.id, draft: key, body: { walk: begun.walk, area: area?.id ?? null, severity: draft.severity, required: draft.required.trim(), found: draft.found.trim(),
      photos: draft.photos, name: person.name, role: person.role, panel: area && draft.panel !== null ? Math.round(Number(draft.panel)) : undefined,
      from_low_end: area && draft.panel !== null && draft.at !== null ? quantity(draft.at, unit) : undefined } })
    go('job', job, 'finding', draft.id)
  }
  return html`<${Screen} title=${say('raise')} over=${record.job.name} back=${path('job', job, ...begun.back)} backTo=${say('back')}>
    ${areas.length > 0 && html`<${Choice} name="area" label=${say('finding.where')} value=${draft.area} onChange=${(/** @type {string} */ one) => change({ area: one === draft.area ? '' : one, panel: one === begun.area ? begun.panel : null, at: null })}
      hint=${say('raise.where.hint')} options=${areas.map((one) => ({ value: one.id, label: one.name }))} />`}
    ${area && html`<${Stepper} name="panel" label=${say('place.panel.number')} hint=${say('raise.if_known')} value=${draft.panel} steps=${[1, 10]} low=${1} high=${area.panel_count ?? 999} onChange=${(/** @type {string} */ value) => change({ panel: String(Math.round(Number(value))) })} onWrong=${() => change({ panel: null })} />`}
    ${area && draft.panel !== null && html`<${Stepper} name="at" label=${say('place.distance')} hint=${say('raise.if_known')} value=${draft.at} unit=${unit} steps=${unit === 'm' ? [0.1, 1] : [0.5, 5]} low=${0} high=${Number(area.panel_length?.value ?? 1000)} onChange=${put('at')} onWrong=${() => change({ at: null })} />`}
    <${TextField} name="found" lines=${2} label=${say('finding.found')} hint=${say('raise.found.hint')} value=${draft.found} onChange=${put('found')} />
    <${TextField} name="required" lines=${2} label=${say('finding.required')} hint=${say('raise.required.hint')} value=${draft.required} onChange=${put('required')} />
    <${Choice} name="severity" label=${say('raise.severity')} value=${draft.severity} onChange=${put('severity')} options=${SEVERITIES.map((one) => ({ value: one, label: say(`severity.${one}`) }))} />
    <${Part} name=${say('finding.picture')}><${Shots} ...${{ job, draft, change }} /><//>
    <${MainAction} name="keep-finding" label=${say('raise.keep')} disabled=${needs.length > 0} run=${run}
      under=${needs.length ? say('raise.still', { what: needs.map((name) => say(`finding.${name}`)).join(', ') }) : ''} />
  <//>`
}
