// How the panels run on the drawn area: slope, coverage, the side they start at, and where they are held.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { shown } from '../frame/amount.js'
import { Part } from '../frame/screen.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { TextField } from '../frame/text_field.js'

/** @param {{draft: any, make: any, assembly: any}} props */
export function Panels({ draft, make, assembly }) {
  const set = (/** @type {string} */ name) => (/** @type {any} */ value) => make({ [name]: value }, name)
  const put = (/** @type {string} */ name) => ({ value: draft[name], onChange: set(name), onWrong: () => make({ [name]: null }, name) })
  const slopeUnit = draft.slope_unit === '/12' ? say('area.slope.unit') : shown({ value: '', unit: draft.slope_unit }).trim()
  return html`<${Part} name=${say('draw.panels_run')}>
    <${Stepper} name="slope" label=${say('area.slope')} unit=${slopeUnit} steps=${[0.5, 1]} low=${0} high=${draft.slope_unit === '/12' ? 48 : 89} ...${put('slope')} />
    <${Stepper} name="coverage" label=${say('area.coverage')} hint=${assembly ? say('draw.coverage.approved', { coverage: shown(assembly.coverage) }) : ''} unit=${draft.coverage_unit} steps=${[0.25, 1]} low=${0.1} high=${2000} ...${put('coverage')} />
    <${Choice} name="start-side" label=${say('area.start')} value=${draft.start} onChange=${set('start')}
      options=${['left', 'right'].map((value) => ({ value, label: say(`area.start.${value}`) }))} />
    <${Choice} name="fixed-known" label=${say('fixed_line')} hint=${say('area.fixed.hint')} value=${draft.fixed} onChange=${set('fixed')}
      options=${['eave', 'ridge', 'between', 'unknown'].map((value) => ({ value, label: say(`draw.fixed.${value}`) }))} />
    ${draft.fixed === 'between' && html`<${Stepper} name="fixed-at" label=${say('area.fixed.at')} unit=${draft.unit} steps=${[1, 10]} low=${0} high=${1000} ...${put('fixed_at')} />`}
    ${draft.fixed !== 'unknown' && html`<${TextField} name="fixed-by" label=${say('area.fixed.by')} hint=${say('area.fixed.by.hint')} value=${draft.fixed_by} onChange=${set('fixed_by')} />`}
  <//>`
}
