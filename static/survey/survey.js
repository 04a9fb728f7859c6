// Pick the place that a claim speaks of: tap it on the drawing, or set area, panel and distance; and a radius.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { spelled } from '../frame/spelled.js'
import { drawn, quantity } from '../frame/amount.js'
import { useDraft } from '../frame/draft.js'
import { Part, Screen } from '../frame/screen.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { MainAction } from '../frame/main_action.js'
import { Plan } from '../roof/plan.js'
import { rounded } from '../roof/pick.js'
import { sorted } from '../roof/order.js'
import { stepsOf } from './address.js'

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props `rest`: an area and a panel to begin with */
export function Survey({ job, record, definitions, person, rest }) {
  const areas = sorted(record.areas, 'name')
  const begun = record.areas[rest[0]] ? rest[0] : areas[0]?.id ?? ''
  const [draft, change] = useDraft(person.id, `survey-place/${job}/${rest.join('/')}`, { area: begun, panel: rest[1] ?? null, at: null, radius: null })
  if (!draft) return null
  const area = record.areas[draft.area]
  const unit = area?.outline.unit
  const radius = draft.radius ?? (unit === 'm' ? '1.5' : unit === 'ft' ? '5' : null)
  const ready = area && draft.panel !== null && draft.at !== null && radius !== null
  const place = () => ({ area: draft.area, panel: Math.round(Number(draft.panel)), from_low_end: quantity(draft.at, unit), radius: quantity(radius ?? '', unit) })
  const steps = unit === 'm' ? [0.1, 1] : [0.5, 5]
  const before = Object.values(record.surveys ?? {}).sort((/** @type {any} */ a, /** @type {any} */ b) => (a.at < b.at ? 1 : -1))
  return html`<${Screen} title=${say('survey')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name} wide>
    <p class="hint">${say('survey.pick.safe')}</p>
    ${areas.length === 0 && html`<p class="big">${say('job.no_area')}</p>`}
    ${areas.length > 1 && html`<${Choice} name="survey-area" label=${say('survey.area')} value=${draft.area} onChange=${(/** @type {string} */ one) => change({ area: one, panel: null, at: null, radius: null })}
      options=${areas.map((one) => ({ value: one.id, label: one.name }))} />`}
    ${area && html`<p class="big">${say('survey.pick')}</p>
      <${Plan} ...${{ record, definitions, area }} tallest=${420} panel=${draft.panel === null ? null : Number(draft.panel)} at=${draft.at === null ? null : drawn(quantity(draft.at, unit), unit)}
        onPick=${(/** @type {number} */ n, /** @type {number} */ far) => change({ panel: String(n), at: rounded(far, unit) })} />
      <${Stepper} name="survey-panel" label=${say('survey.panel')} value=${draft.panel} steps=${[1, 10]} low=${1} high=${area.panel_count ?? 999} onChange=${(/** @type {string} */ value) => change({ panel: String(Math.round(Number(value))) })} onWrong=${() => change({ panel: null })} />
      <${Stepper} name="survey-at" label=${say('survey.at')} value=${draft.at} unit=${unit} steps=${steps} low=${0} high=${Number(area.panel_length?.value ?? 1000)} onChange=${(/** @type {string} */ at) => change({ at })} onWrong=${() => change({ at: null })} />
      <${Stepper} name="survey-radius" label=${say('survey.radius')} value=${radius} unit=${unit} steps=${steps} low=${0} high=${1000} onChange=${(/** @type {string} */ value) => change({ radius: value })} onWrong=${() => change({ radius: null })} />`}
    ${before.length > 0 && html`<${Part} name=${say('survey.before')}>${before.map((/** @type {any} */ one) => html`<a key=${one.id} class="press tall" data-name="survey-before" href=${path('job', job, 'survey-found', ...stepsOf(one))}>
      <span class="label">${say('survey.before.row', { area: record.areas[one.area]?.name ?? '—', panel: one.panel, at: spelled(one.at) })}</span><span class="go" aria-hidden="true">→</span></a>`)}<//>`}
    <${MainAction} name="show-survey" label=${say('survey.show')} under=${ready ? '' : say('survey.show.still')} disabled=${!ready} run=${() => go('job', job, 'survey-found', ...stepsOf(place()))} />
  <//>`
}
