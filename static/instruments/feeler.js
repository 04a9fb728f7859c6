// Feeler blades: the thickest one that enters. Zero where none does.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { shown } from '../frame/amount.js'
import { stepsOf, unitFor } from './unit_for.js'

/** What a usual set holds. */
const BLADES = /** @type {Record<string, string[]>} */ ({
  in: ['0.004', '0.005', '0.008', '0.01', '0.015', '0.02', '0.025', '0.035', '0.0625'], mm: ['0.1', '0.15', '0.2', '0.25', '0.4', '0.5', '0.6', '0.9', '1.5'],
})

/** @param {{item: any, record: any, value: any, onChange: (reading: any) => any}} props */
export function Feeler({ item, record, value, onChange }) {
  const unit = unitFor(item, record)
  const blades = BLADES[unit] ?? []
  const read = value?.value?.value ?? null
  const [typed, setTyped] = useState(read !== null && read !== '0' && !blades.includes(read))
  const put = (/** @type {string} */ text) => onChange({ value: { value: text, unit } })
  const choose = (/** @type {string} */ one) => {
    setTyped(one === 'typed')
    if (one === 'typed') onChange(null)
    else put(one)
  }
  return html`<div class="blades"><${Choice} name="blade" label=${say('feeler.blade')} value=${typed ? 'typed' : read} onChange=${choose}
      options=${[{ value: '0', label: say('feeler.none') }, ...blades.map((one) => ({ value: one, label: shown({ value: one, unit }) })), { value: 'typed', label: say('feeler.typed') }]} /></div>
    ${typed && html`<${Stepper} name="reading" label=${say('feeler.thickness')} value=${read} unit=${unit} steps=${stepsOf(item, record, unit, true)} low=${0} high=${100}
      onChange=${put} onWrong=${() => onChange(null)} />`}`
}
