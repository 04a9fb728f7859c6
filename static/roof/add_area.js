// A roof area added by hand, on the roof, without a drawing: a rectangle between eave and ridge.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { enter } from '../frame/enter.js'
import { useDraft } from '../frame/draft.js'
import { quantity, unitOf } from '../frame/amount.js'
import { uuid7 } from '../entry/uuid7.js'
import { Screen } from '../frame/screen.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { TextField } from '../frame/text_field.js'
import { MainAction } from '../frame/main_action.js'
import { Plan } from './plan.js'
import { sorted } from './order.js'
import { areaBody, blankArea, wholeArea } from './new_area.js'

/** @param {{job: string, record: any, person: any}} props */
export function AddArea({ job, record, person }) {
  const [draft, change] = useDraft(person.id, `area/${job}`, blankArea(record))
  const [id] = useState(uuid7)
  if (!draft) return null
  const set = (/** @type {string} */ name) => (/** @type {any} */ value) => change({ [name]: value })
  const put = (/** @type {string} */ name) => ({ value: draft[name], onChange: set(name), onWrong: () => change({ [name]: null }) })
  const far = unitOf(record.job, 'far')
  const near = unitOf(record.job, 'near')
  const assemblies = sorted(record.assemblies, 'name')
  const assembly = record.assemblies[draft.assembly]
  const pickAssembly = (/** @type {string} */ one) => change({ assembly: one, coverage: record.assemblies[one].coverage.value, coverage_unit: record.assemblies[one].coverage.unit })
  const whole = wholeArea(draft)
  const preview = whole && { ...areaBody(draft, record), id, panel_count: null }
  const run = async () => {
    await enter({ job, kind: 'area', subject: id, body: areaBody(draft, record), draft: `area/${job}` })
    go('job', job, 'area', id)
  }
  return html`<${Screen} title=${say('job.add_area')} back=${path('job', job)} backTo=${record.job.name} wide>
    <${TextField} name="area-name" label=${say('area.name')} hint=${say('area.name.hint')} value=${draft.name} onChange=${set('name')} />
    <${Choice} name="assembly" label=${say('area.assembly')} value=${draft.assembly} onChange=${pickAssembly}
      options=${assemblies.map((one) => ({ value: one.id, label: one.name, under: one.approval?.reference }))} />
    <${Stepper} name="width" label=${say('area.width')} unit=${far} steps=${[1, 10]} low=${0.1} high=${2000} ...${put('width')} />
    <${Stepper} name="length" label=${say('area.length')} unit=${far} steps=${[1, 10]} low=${0.1} high=${1000} ...${put('length')} />
    <${Stepper} name="slope" label=${say('area.slope')} unit=${say('area.slope.unit')} steps=${[0.5, 1]} low=${0} high=${48} ...${put('slope')} />
    <${Stepper} name="coverage" label=${say('area.coverage')} unit=${draft.coverage_unit || near} steps=${[0.25, 1]} low=${0.1} high=${2000} ...${put('coverage')} />
    <${Choice} name="start-side" label=${say('area.start')} value=${draft.start} onChange=${set('start')}
      options=${['left', 'right'].map((value) => ({ value, label: say(`area.start.${value}`) }))} />
    <${Choice} name="fixed-known" label=${say('fixed_line')} hint=${say('area.fixed.hint')} value=${draft.fixed} onChange=${set('fixed')}
      options=${['eave', 'ridge', 'between', 'unknown'].map((value) => ({ value, label: say(`area.fixed.${value}`) }))} />
    ${draft.fixed === 'between' && html`<${Stepper} name="fixed-at" label=${say('area.fixed.at')} unit=${far} steps=${[1, 10]} low=${0} high=${1000} ...${put('fixed_at')} />`}
    ${draft.fixed !== 'unknown' && html`<${TextField} name="fixed-by" label=${say('area.fixed.by')} hint=${say('area.fixed.by.hint')} value=${draft.fixed_by} onChange=${set('fixed_by')} />`}
    ${assembly && preview && html`<${Plan} record=${{ ...record, stations: {}, walks: {} }} definitions=${[]} area=${preview} tallest=${300} />`}
    <${MainAction} name="save-area" label=${say('area.save')} run=${run} disabled=${!draft.name.trim() || !assembly || !whole} />
  <//>`
}
