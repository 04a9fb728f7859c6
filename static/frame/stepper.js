// A number that gloves can set: the figure large, typed or dictated if wanted, and steps beside it.

import { html, useEffect, useState } from './view.js'
import { say } from '../words/say.js'
import { decimal, mark, step } from './amount.js'

/**
 * @param {{label: string, value: string | null, unit?: string, steps: number[], onChange: (value: string) => any,
 *   onWrong?: (text: string) => any, from?: string, low?: number, high?: number, name?: string, hint?: string}} props `steps` positive, e.g. `[1, 10]`;
 *   `from`: where the first step starts while there is no value; `onWrong`: the text is no
 *   such number, so the caller drops the value: the last right part of a wrong text (`12` of `12..5`) is nobody's reading
 */
export function Stepper({ label, value, unit, steps, onChange, onWrong, from = '0', low = -1e6, high = 1e6, name, hint }) {
  const [typed, setTyped] = useState(/** @type {string | null} */ (null))
  const id = `in-${name ?? label.replace(/\W+/g, '-')}`
  const wrong = typed !== null && (decimal(typed) === null || Number(decimal(typed)) < low || Number(decimal(typed)) > high)
  const put = (/** @type {string} */ text) => {
    const read = decimal(text)
    if (read !== null && Number(read) >= low && Number(read) <= high) onChange(read)
    else onWrong?.(text)
  }
  // A value set elsewhere, such as by a tap on the plan, takes the place of a wrong text.
  useEffect(() => { if (wrong && value !== null) setTyped(null) }, [value])
  const type = (/** @type {any} */ event) => {
    setTyped(event.target.value)
    put(event.target.value)
  }
  const by = (/** @type {number} */ amount) => () => {
    setTyped(null)
    const next = Number(step(value ?? from, amount))
    put(step(String(Math.min(high, Math.max(low, next))), 0))
  }
  return html`<div class="stepper" data-name=${name}>
    <label for=${id}>${label}</label>
    ${hint && html`<p class="hint">${hint}</p>`}
    <div class="figure">
      <input id=${id} inputmode="decimal" autocomplete="off" value=${typed ?? (value ?? '').replace('-', '−')}
        aria-invalid=${wrong} onInput=${type} onBlur=${() => { if (!wrong || !typed?.trim()) setTyped(null) }} />
      ${unit && html`<span class="unit">${unit}</span>`}
    </div>
    ${wrong && html`<p class="problem" role="alert">${say('trouble.number', { low: String(low), high: String(high), field: label, value: typed ?? '' })}</p>`}
    <div class=${steps.every((amount) => String(amount).length < 3) && steps.length > 1 ? 'steps short' : 'steps'}>
      ${steps.map((amount) => html`
        <button type="button" class="press" onClick=${by(-amount)} aria-label=${say('step.less', { amount: mark(amount, unit), label })}>−\u00a0${mark(amount, unit)}</button>
        <button type="button" class="press" onClick=${by(amount)} aria-label=${say('step.more', { amount: mark(amount, unit), label })}>+\u00a0${mark(amount, unit)}</button>`)}
    </div>
  </div>`
}
