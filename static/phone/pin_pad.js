// Digits for gloves: twelve keys, and a plain field for who would rather type.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'

/** @param {{pin: string, onChange: (pin: string) => void}} props */
export function PinPad({ pin, onChange }) {
  const put = (/** @type {string} */ digit) => () => { if (pin.length < 12) onChange(pin + digit) }
  return html`<div class="pad">
    <label for="in-pin-digits">${say('pin')}</label>
    <input id="in-pin-digits" type="password" inputmode="numeric" autocomplete="off" value=${pin}
      onInput=${(/** @type {any} */ event) => onChange(event.target.value.replace(/\D/g, '').slice(0, 12))} />
    <div class="keys">
      ${[...'123456789'].map((digit) => html`<button type="button" class="press" onClick=${put(digit)}>${digit}</button>`)}
      <button type="button" class="press" onClick=${() => onChange('')} aria-label=${say('pin.clear')}>C</button>
      <button type="button" class="press" onClick=${put('0')}>0</button>
      <button type="button" class="press" onClick=${() => onChange(pin.slice(0, -1))} aria-label=${say('pin.back')}>⌫</button>
    </div>
  </div>`
}
