// A plain count.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { Stepper } from '../frame/stepper.js'

/** @param {{value: any, onChange: (reading: any) => any}} props */
export function Count({ value, onChange }) {
  const put = (/** @type {string} */ text) => { if (/^\d+$/.test(text)) onChange({ count: Number(text) }) }
  return html`<${Stepper} name="count" label=${say('count.count')} value=${value ? String(value.count) : null} steps=${[1, 5]} low=${0} high=${9999} onChange=${put} onWrong=${() => onChange(null)} />`
}
