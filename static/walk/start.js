// Start a walk: the safety gate, then what the day is like. The same screen corrects an open walk, and serves the day's
// stops and holds, to which it then leads back.

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
import { forDay } from './for_day.js'
import { BY, SKY, WIND, blankWalk, doubtOf, missing, walkBody } from './new_walk.js'

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props */
export function Start({ job, record, definitions, person, rest }) {
  const [first, ...steps] = rest
  const then = first === 'then' ? steps : []
  const old = first && !then.length ? record.walks[first] : null
  const known = mayBegin(definitions, person)
  const key = `walk/${job}/${old?.id ?? ['new', ...then].join('/')}`
  const [draft, change] = useDraft(person.id, key, { id: old?.id ?? uuid7(), ...blankWalk(record, known, person, old), ...forDay(record, known, then) })
  if (!draft) return null
  const back = old ? path('job', job, 'walk', old.id) : path('job', job, ...then)
  if (!confirmed(draft.safe, Date.now())) {
    const low = mayBegin(definitions, person, true)
    const ground = !then.length && low.length && (!old || low.some((one) => one.digest === old.definition))
      ? () => change({ safe: Date.now(), ground: true, definition: low.find((one) => one.digest === draft.definition)?.digest ?? low[0].digest }) : undefined
    const confirm = () => change({ safe: Date.now(), ground: false })
    return html`<${Screen} title=${say('gate')} over=${record.job.name} back=${back} backTo=${say('back')}>
      <${Gate} confirm=${confirm} ground=${ground} /><//>`
  }
  const mine = mayBegin(definitions, person, draft.ground)
  const chosen = mine.find((one) => one.digest === draft.definition)
  const oneArea = chosen?.per === 'area'
  const open = missing(draft, chosen)
  const set = (/** @type {string} */ name) => (/** @type {any} */ value) => change({ [name]: value })
  const heat = unitOf(record.job, 'heat')
  const areas = sorted(record.areas, 'name')
  const toggle = (/** @type {string} */ id) => change((/** @type {any} */ now) => ({ areas: now.areas.includes(id) ? now.areas.filter((/** @type {string} */ one) => one !== id) : [...now.areas, id] }))
  const by = (/** @type {string} */ one) => change({ by: one, doubt: doubtOf(record.job, one) })
  const run = async () => {
    await enter({ job, kind: 'walk', subject: draft.id, replaces: old?.heads ?? [], draft: key, body: walkBody(draft, record, chosen) })
    go('job', job, ...(then.length ? then : ['walk', draft.id]))
  }
  return html`<${Screen} title=${say(old ? 'walk.correct' : 'job.start')} over=${record.job.name} back=${back} backTo=${say('back')}>
    ${mine.length === 0 && html`<p class="problem" role="alert"><strong>▲ ${say('walk.no_definition', { role: say(`role.${person.role}`) })}</strong></p>`}
    ${mine.length > 1 && html`<${Choice} name="definition" label=${say('walk.which')} value=${draft.definition} onChange=${set('definition')}
      options=${mine.map((one) => ({ value: one.digest, label: pick(one.title) ?? one.id }))} />`}
    ${areas.length > 1 && html`<${Choice} many=${!oneArea} name="areas" label=${say(oneArea ? 'walk.areas.one' : 'walk.areas')} value=${oneArea ? (draft.areas.length === 1 ? draft.areas[0] : '') : draft.areas}
      onChange=${oneArea ? (/** @type {string} */ id) => change({ areas: [id] }) : toggle} options=${areas.map((one) => ({ value: one.id, label: one.name }))} />`}
    ${!oneArea && html`<${Stepper} name="metal" label=${say('walk.metal')} value=${draft.metal} from=${heat === 'F' ? '70' : '20'} unit=${'°' + heat} steps=${[1, 10]} low=${-80} high=${260} onChange=${set('metal')} onWrong=${() => change({ metal: null })} />
    ${draft.metal !== null && Number(draft.metal) >= (heat === 'F' ? 120 : 49) && html`<p class="problem" role="alert"><strong>▲ ${say('gate.hot')}</strong></p>`}
    <${Choice} name="by" label=${say('walk.metal_by')} value=${draft.by} onChange=${by}
      options=${BY.map((one) => ({ value: one, label: say(`walk.by.${one}`), under: '± ' + shown({ value: doubtOf(record.job, one), unit: 'd' + heat }) }))} />`}
    <${Choice} name="sky" label=${say('walk.sky')} value=${draft.sky} onChange=${set('sky')} options=${SKY.map((one) => ({ value: one, label: say(`sky.${one}`) }))} />
    ${draft.sky === 'wet' && html`<p class="problem" role="alert"><strong>▲ ${say('gate.weather')}</strong></p>`}
    <${Choice} name="wind" label=${say('walk.wind')} value=${draft.wind} onChange=${set('wind')} options=${WIND.map((one) => ({ value: one, label: say(`wind.${one}`) }))} />
    ${draft.wind === 'gusts' && html`<p class="problem" role="alert"><strong>▲ ${say('walk.gusts')}</strong></p>`}
    <${TextField} name="crew" label=${say('walk.crew')} value=${draft.crew} onChange=${set('crew')} />
    <${Stepper} name="head-count" label=${say('walk.head_count')} value=${draft.head_count} steps=${[1]} low=${0} high=${99} onChange=${set('head_count')} onWrong=${() => change({ head_count: '0' })} />
    ${!oneArea && html`<${Placed} record=${record} areas=${areas.filter((one) => draft.areas.includes(one.id))} placed=${draft.placed} onChange=${set('placed')} />`}
    ${person.role === 'inspector' && html`<${Choice} name="independent" label=${say('walk.independent')} value=${draft.independent} onChange=${set('independent')}
      options=${['yes', 'no'].map((one) => ({ value: one, label: say(one) }))} />`}
    <${MainAction} name="begin" label=${say(old ? 'save' : 'walk.begin')} run=${run} disabled=${open.length > 0}
      under=${open.length ? say('walk.still', { what: open.map((name) => say(`walk.${name}`)).join(', ') }) : ''} />
  <//>`
}
