// A plain count; where the rule asks for it, out of how many looked at.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Stepper } from '../frame/stepper.js'

const MOST = 9999

/** @param {{item: any, value: any, onChange: (reading: any) => any}} props */
export function Count({ item, value, onChange }) {
  const asksOf = Object.values(item.rule?.inputs ?? {}).includes('reading.of')
  const [count, setCount] = useState(/** @type {string | null} */ (value ? String(value.count) : null))
  const [of, setOf] = useState(/** @type {string | null} */ (value?.of === undefined ? null : String(value.of)))
  const tell = (/** @type {string | null} */ found, /** @type {string | null} */ looked) => {
    setCount(found)
    setOf(looked)
    const counts = [found, ...(asksOf ? [looked] : [])]
    const whole = counts.every((one) => one !== null && /^\d+$/.test(one)) && (!asksOf || Number(found) <= Number(looked))
    onChange(!whole ? null : asksOf ? { count: Number(found), of: Number(looked) } : { count: Number(found) })
  }
  const over = asksOf && count !== null && of !== null && Number(count) > Number(of)
  const part = [count, of].find((one) => one !== null && !/^\d+$/.test(one))
  return html`
    ${asksOf && html`<${Stepper} name="of" label=${say('count.of')} value=${of} steps=${[1, 5]} low=${0} high=${MOST}
      onChange=${(/** @type {string} */ text) => tell(count, text)} onWrong=${() => tell(count, null)} />`}
    <${Stepper} name="count" label=${say(asksOf ? 'count.found' : 'count.count')} value=${count} steps=${[1, 5]} low=${0} high=${MOST}
      onChange=${(/** @type {string} */ text) => tell(text, of)} onWrong=${() => tell(null, of)} />
    ${over && html`<p class="problem" role="alert" data-name="count-over"><strong>▲ ${say('count.over', { count, of })}</strong></p>`}
    ${part && html`<p class="problem" role="alert"><strong>▲ ${say('count.whole', { value: part })}</strong></p>`}`
}
