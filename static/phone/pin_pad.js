// Digits for gloves: twelve keys, and a plain field for who would rather type.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { pinDigits } from '../people/pin.js'
import { PinField } from './pin_field.js'

/** @param {{pin: string, onChange: (pin: string) => void}} props */
export function PinPad({ pin, onChange }) {
  const put = (/** @type {string} */ digit) => () => onChange(pinDigits(pin + digit))
  return html`<div class="pad">
    <${PinField} name="pin-digits" label=${say('pin')} value=${pin} onChange=${onChange} />
    <div class="keys">
      ${[...'123456789'].map((digit) => html`<button type="button" class="press" onClick=${put(digit)}>${digit}</button>`)}
      <button type="button" class="press" onClick=${() => onChange('')} aria-label=${say('pin.clear')}>C</button>
      <button type="button" class="press" onClick=${put('0')}>0</button>
      <button type="button" class="press" onClick=${() => onChange(pin.slice(0, -1))} aria-label=${say('pin.back')}>⌫</button>
    </div>
  </div>`
}
