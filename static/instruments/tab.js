// A clip's tab, read with a rule from its mid-travel: which way first, then how far. A person never types a sign.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { stepsOf, unitFor } from './unit_for.js'

const WAYS = ['ridge', 'middle', 'eave']

/** @param {{item: any, record: any, value: any, onChange: (reading: any) => any}} props `value.value` is toward the ridge when above zero */
export function Tab({ item, record, value, onChange }) {
  const unit = unitFor(item, record)
  const read = value?.value?.value ?? null
  const [way, setWay] = useState(read === null ? '' : Number(read) === 0 ? 'middle' : Number(read) < 0 ? 'eave' : 'ridge')
  const size = read === null ? null : read.replace('-', '')
  const put = (/** @type {string} */ toward, /** @type {string | null} */ far) => {
    if (toward === 'middle') return onChange({ value: { value: '0', unit } })
    if (far === null || Number(far) === 0) return onChange(null)
    return onChange({ value: { value: toward === 'eave' ? `-${far}` : far, unit } })
  }
  return html`<${Choice} name="tab-way" label=${say('tab.way')} value=${way} onChange=${(/** @type {string} */ one) => { setWay(one); put(one, size) }}
      options=${WAYS.map((one) => ({ value: one, label: say(`tab.way.${one}`) }))} />
    ${(way === 'ridge' || way === 'eave') && html`<${Stepper} name="reading" label=${say('tab.far')} value=${size} unit=${unit} steps=${stepsOf(item, record, unit)} low=${0} high=${1000}
      onChange=${(/** @type {string} */ far) => put(way, far)} onWrong=${() => put(way, null)} />`}`
}
