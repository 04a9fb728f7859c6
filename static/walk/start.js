// Start a walk: the safety gate, then what the day is like. The same screen corrects an open walk.

import { html } from '../frame/view.js'
import { pick, say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { enter } from '../frame/enter.js'
import { useDraft } from '../frame/draft.js'
import { shown, unitOf } from '../frame/amount.js'
import { uuid7 } from '../entry/uuid7.js'
import { Screen } from '../frame/screen.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { TextField } from '../frame/text_field.js'
import { MainAction } from '../frame/main_action.js'
import { sorted } from '../roof/order.js'
import { mayBegin } from '../checklist/applies.js'
import { Gate, confirmed } from './gate.js'
import { Placed } from './placed.js'
import { BY, SKY, WIND, blankWalk, doubtOf, ready, walkBody } from './new_walk.js'

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props */
export function Start({ job, record, definitions, person, rest }) {
  const old = rest[0] ? record.walks[rest[0]] : null
  const mine = mayBegin(definitions, person)
  const key = `walk/${job}/${old?.id ?? 'new'}`
  const [draft, change] = useDraft(person.id, key, { id: old?.id ?? uuid7(), ...blankWalk(record, mine, old) })
  if (!draft) return null
  const back = old ? path('job', job, 'walk', old.id) : path('job', job)
  if (!confirmed(draft.safe, Date.now())) {
    return html`<${Screen} title=${say('gate')} over=${record.job.name} back=${back} backTo=${say('back')}>
      <${Gate} confirm=${() => change({ safe: Date.now() })} /><//>`
  }
  const set = (/** @type {string} */ name) => (/** @type {any} */ value) => change({ [name]: value })
  const heat = unitOf(record.job, 'heat')
  const areas = sorted(record.areas, 'name')
  const toggle = (/** @type {string} */ id) => change((/** @type {any} */ now) => ({ areas: now.areas.includes(id) ? now.areas.filter((/** @type {string} */ one) => one !== id) : [...now.areas, id] }))
  const by = (/** @type {string} */ one) => change({ by: one, doubt: doubtOf(one, heat) })
  const run = async () => {
    await enter({ job, kind: 'walk', subject: draft.id, replaces: old?.heads ?? [], draft: key, body: walkBody(draft, record) })
    go('job', job, 'walk', draft.id)
  }
  return html`<${Screen} title=${say(old ? 'walk.correct' : 'job.start')} over=${record.job.name} back=${back} backTo=${say('back')}>
    ${mine.length === 0 && html`<p class="problem" role="alert"><strong>▲ ${say('walk.no_definition', { role: say(`role.${person.role}`) })}</strong></p>`}
    ${mine.length > 1 && html`<${Choice} name="definition" label=${say('walk.which')} value=${draft.definition} onChange=${set('definition')}
      options=${mine.map((one) => ({ value: one.digest, label: pick(one.title) ?? one.id }))} />`}
    ${areas.length > 1 && html`<${Choice} many name="areas" label=${say('walk.areas')} value=${draft.areas} onChange=${toggle}
      options=${areas.map((one) => ({ value: one.id, label: one.name }))} />`}
    <${Stepper} name="metal" label=${say('walk.metal')} value=${draft.metal} from=${heat === 'F' ? '70' : '20'} unit=${'°' + heat} steps=${[1, 10]} low=${-80} high=${260} onChange=${set('metal')} onWrong=${() => change({ metal: null })} />
    ${draft.metal !== null && Number(draft.metal) >= (heat === 'F' ? 120 : 49) && html`<p class="problem" role="alert"><strong>▲ ${say('gate.hot')}</strong></p>`}
    <${Choice} name="by" label=${say('walk.metal_by')} value=${draft.by} onChange=${by}
      options=${BY.map((one) => ({ value: one, label: say(`walk.by.${one}`), under: '± ' + shown({ value: doubtOf(one, heat), unit: 'd' + heat }) }))} />
    <${Choice} name="sky" label=${say('walk.sky')} value=${draft.sky} onChange=${set('sky')} options=${SKY.map((one) => ({ value: one, label: say(`sky.${one}`) }))} />
    ${draft.sky === 'wet' && html`<p class="problem" role="alert"><strong>▲ ${say('gate.weather')}</strong></p>`}
    <${Choice} name="wind" label=${say('walk.wind')} value=${draft.wind} onChange=${set('wind')} options=${WIND.map((one) => ({ value: one, label: say(`wind.${one}`) }))} />
    ${draft.wind === 'gusts' && html`<p class="problem" role="alert"><strong>▲ ${say('walk.gusts')}</strong></p>`}
    <${TextField} name="crew" label=${say('walk.crew')} value=${draft.crew} onChange=${set('crew')} />
    <${Stepper} name="head-count" label=${say('walk.head_count')} value=${draft.head_count} steps=${[1]} low=${0} high=${99} onChange=${set('head_count')} />
    <${Placed} record=${record} areas=${areas.filter((one) => draft.areas.includes(one.id))} placed=${draft.placed} onChange=${set('placed')} />
    ${person.role === 'inspector' && html`<${Choice} name="independent" label=${say('walk.independent')} value=${draft.independent} onChange=${set('independent')}
      options=${['yes', 'no'].map((one) => ({ value: one, label: say(one) }))} />`}
    <${MainAction} name="begin" label=${say(old ? 'save' : 'walk.begin')} run=${run} disabled=${!ready(draft)}
      under=${ready(draft) ? '' : say('walk.still', { what: missing(draft) })} />
  <//>`
}

/** @param {any} draft */
function missing(draft) {
  const names = /** @type {Record<string, boolean>} */ ({ which: !draft.definition, areas: !draft.areas.length, metal: draft.metal === null, metal_by: !draft.by, sky: !draft.sky, wind: !draft.wind })
  return Object.keys(names).filter((name) => names[name]).map((name) => say(`walk.${name}`)).join(', ')
}
