// One number in the item's or the job's own unit.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { Stepper } from '../frame/stepper.js'
import { Tab } from './tab.js'
import { stepsOf, unitFor } from './unit_for.js'

/** @param {{item: any, record: any, value: any, onChange: (reading: any) => any}} props */
export function NumberReading({ item, record, value, onChange }) {
  const unit = unitFor(item, record)
  const rule = item.rule?.name ?? ''
  if (rule.startsWith('clip@')) return html`<${Tab} ...${{ item, record, value, onChange }} />` // from before tabs had an instrument
  return html`<${Stepper} name="reading" label=${say('number.reading')} value=${value?.value?.value ?? null} unit=${unit === '/12' ? say('area.slope.unit') : unit}
    steps=${stepsOf(item, record, unit, rule.startsWith('thickness@'))} low=${0} high=${100000} onChange=${(/** @type {string} */ text) => onChange({ value: { value: text, unit } })} onWrong=${() => onChange(null)} />`
}
