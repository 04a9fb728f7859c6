// One number in the job's own unit.

import { html } from '../frame/view.js'
import { pick, say } from '../words/say.js'
import { Stepper } from '../frame/stepper.js'

const STEPS = /** @type {Record<string, number[]>} */ ({ in: [0.0625, 0.5], mm: [1, 10], '/12': [0.25, 1], F: [1, 10], C: [1, 5] })

/** @param {{item: any, record: any, value: any, onChange: (reading: any) => any}} props */
export function NumberReading({ item, record, value, onChange }) {
  const unit = item.unit?.[record.job.units] ?? (record.job.units === 'SI' ? 'mm' : 'in')
  const thin = item.rule?.name?.startsWith('thickness')
  const steps = thin ? [unit === 'mm' ? 0.01 : 0.0005, unit === 'mm' ? 0.1 : 0.005] : STEPS[unit] ?? [1]
  return html`<${Stepper} name="reading" label=${say('number.reading')} hint=${item.rule?.name?.startsWith('clip') ? say('number.toward_ridge') : undefined}
    value=${value?.value?.value ?? null} unit=${unit === '/12' ? 'in 12' : unit} steps=${steps} low=${-1000} high=${100000}
    onChange=${(/** @type {string} */ text) => onChange({ value: { value: text, unit } })} />
  <p class="hint">${pick(item.how)}</p>`
}
