// One number in the job's own unit.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { Stepper } from '../frame/stepper.js'
import { OffsetReading } from './offset_reading.js'

const STEPS = /** @type {Record<string, number[]>} */ ({ in: [0.0625, 0.5], mm: [1, 10], '/12': [0.25, 1], deg: [0.5, 5], F: [1, 10], C: [1, 5] })
const THIN = /** @type {Record<string, number[]>} */ ({ in: [0.0001, 0.001], mm: [0.01, 0.1] })

/** @param {{item: any, record: any, value: any, onChange: (reading: any) => any}} props */
export function NumberReading({ item, record, value, onChange }) {
  const unit = item.unit?.[record.job.units] ?? (record.job.units === 'SI' ? 'mm' : 'in')
  const rule = item.rule?.name ?? ''
  const steps = (rule.startsWith('thickness') && THIN[unit]) || STEPS[unit] || [1]
  if (rule.startsWith('clip')) return html`<${OffsetReading} ...${{ unit, steps, value, onChange }} />`
  return html`<${Stepper} name="reading" label=${say('number.reading')} value=${value?.value?.value ?? null} unit=${unit === '/12' ? say('area.slope.unit') : unit}
    steps=${steps} low=${0} high=${100000} onChange=${(/** @type {string} */ text) => onChange({ value: { value: text, unit } })} onWrong=${() => onChange(null)} />`
}
