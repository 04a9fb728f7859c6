// A field that takes digits only. What else is typed goes nowhere, and the field says so.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { pinDigits } from '../people/pin.js'

/** @param {{name: string, label: string, hint?: string, value: string, onChange: (pin: string) => void}} props */
export function PinField({ name, label, hint, value, onChange }) {
  const [dropped, setDropped] = useState(false)
  const id = `in-${name}`
  const put = (/** @type {any} */ event) => {
    const typed = event.target.value
    const pin = pinDigits(typed)
    event.target.value = pin // nothing is drawn again where only what is dropped was typed
    setDropped((/** @type {boolean} */ was) => pin !== typed || (was && pin !== ''))
    onChange(pin)
  }
  return html`<div class="field" data-name=${name}>
    <label for=${id}>${label}</label>
    ${hint && html`<p class="hint" id=${id + '-hint'}>${hint}</p>`}
    <input id=${id} type="password" inputmode="numeric" autocomplete="off" value=${value} onInput=${put}
      aria-describedby=${hint ? id + '-hint' : undefined} />
    <p role="status">${dropped ? say('pin.digits_only') : ''}</p>
  </div>`
}
