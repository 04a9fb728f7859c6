// What was found on this roof for one line: typed, stepped or chosen, and taken back by a second press.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { quantity, unitOf } from '../frame/amount.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { TextField } from '../frame/text_field.js'

/** What a line asks for of the roof itself; the rest it takes from the record. */
const ASKED = /** @type {Record<string, string[]>} */ ({
  slope_found: ['slope_by', 'slope'], fixed_count: ['fixed_lines'], fold_gap: ['fold_gap', 'metal_now', 'metal_now_by'], clearance: ['clearance', 'metal_now', 'metal_now_by'],
  thickness: ['gauge', 'gauge_system'], penetration: ['fastener_length', 'build_up'], deck: ['deck'], underlayment: ['underlayment'],
})
const OPTIONS = /** @type {Record<string, string[]>} */ ({
  slope_by: ['level', 'inclinometer'], metal_now_by: ['contact', 'infrared', 'estimate'], gauge_system: ['MSG', 'GSG', 'USS', 'BS', 'mil'], deck: ['as_approved', 'other'], underlayment: ['as_approved', 'other'],
})
const NEAR = /** @type {Record<string, number[]>} */ ({ in: [0.0625, 0.5], mm: [1, 10] })

/** @param {string} line @returns {string[]} */
export function asked(line) {
  return ASKED[line] ?? []
}

/** @param {{field: string, record: any, found: any, change: (found: any) => any}} props */
export function Found({ field, record, found, change }) {
  const put = (/** @type {any} */ value) => change({ ...found, [field]: value })
  const label = say(`fit.found.${field}`)
  const hint = say(`fit.found.${field}.how`)
  if (OPTIONS[field]) {
    return html`<${Choice} name=${field} label=${label} hint=${hint} value=${found[field]} onChange=${(/** @type {string} */ one) => put(one === found[field] ? undefined : one)}
      options=${OPTIONS[field].map((value) => ({ value, label: say(`fit.choice.${value}`) }))} />`
  }
  if (field === 'gauge') return html`<${TextField} name="gauge" label=${label} hint=${hint} inputmode="decimal" value=${found.gauge ?? ''} onChange=${(/** @type {string} */ text) => put(text.trim() || undefined)} />`
  if (field === 'fixed_lines') {
    const whole = (/** @type {string} */ text) => put(Number.isInteger(Number(text)) ? Number(text) : undefined)
    return html`<${Stepper} name=${field} label=${label} hint=${hint} value=${found[field] === undefined ? null : String(found[field])} steps=${[1]} low=${0} high=${99} onChange=${whole} onWrong=${() => put(undefined)} />`
  }
  const unit = field === 'slope' ? '/12' : unitOf(record.job, field === 'metal_now' ? 'heat' : 'near')
  // A number that stands wrong is null, not left out: what nobody looked at may be taken from the approval.
  const [steps, low, high] = field === 'slope' ? [[0.25, 1], 0, 48] : field === 'metal_now' ? [[1, 10], -80, 250] : [NEAR[unit], 0, 2000]
  return html`<${Stepper} name=${field} label=${label} hint=${hint} value=${found[field]?.value ?? null} unit=${unit === '/12' ? say('area.slope.unit') : field === 'metal_now' ? `°${unit}` : unit}
    steps=${steps} low=${low} high=${high} onChange=${(/** @type {string} */ text) => put(quantity(text, unit))} onWrong=${(/** @type {string} */ text) => put(text.trim() ? null : undefined)} />`
}
