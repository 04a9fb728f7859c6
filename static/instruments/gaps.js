// Gaps between fasteners: one after another, or a count over a length.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { shown } from '../frame/amount.js'

/** @param {{record: any, value: any, onChange: (reading: any) => any}} props */
export function Gaps({ record, value, onChange }) {
  const metric = record.job.units === 'SI'
  const near = metric ? 'mm' : 'in'
  const far = metric ? 'm' : 'ft'
  const [next, setNext] = useState(/** @type {string | null} */ (null))
  const [way, setWay] = useState(value?.count !== undefined && !value.gaps ? 'count' : 'gaps')
  const gaps = value?.gaps ?? []
  const keep = () => { if (next !== null && Number(next) > 0) { onChange({ ...value, gaps: [...gaps, { value: next, unit: near }] }); setNext(null) } }
  const dropLast = () => onChange(gaps.length > 1 ? { ...value, gaps: gaps.slice(0, -1) } : null)
  const [count, setCount] = useState(/** @type {string | null} */ (value?.count ? String(value.count) : null))
  const [over, setOver] = useState(/** @type {string | null} */ (value?.over?.value ?? '10'))
  const counted = (/** @type {string | null} */ number, /** @type {string | null} */ length) => {
    setCount(number)
    setOver(length)
    const whole = number !== null && /^\d+$/.test(number) && length !== null // else nothing was counted: no part of it stays
    const rest = gaps.length ? { gaps } : null
    onChange(whole ? { ...rest, count: Number(number), over: { value: length, unit: far } } : rest)
  }
  return html`
    <${Choice} name="gaps-way" label=${say('gaps.way')} value=${way} onChange=${setWay}
      options=${[{ value: 'gaps', label: say('gaps.one_by_one') }, { value: 'count', label: say('gaps.count_over') }]} />
    ${(way === 'gaps' || gaps.length > 0) && html`<p class="figure-line" data-name="gap-list">${gaps.length ? gaps.map(shown).join(' · ') : say('gaps.none')}</p>`}
    ${way === 'gaps' && html`
      <${Stepper} name="gap" label=${say('gaps.next')} value=${next} unit=${near} steps=${metric ? [5, 50] : [0.25, 1]} low=${0} high=${metric ? 5000 : 200} onChange=${setNext} onWrong=${() => setNext(null)} />
      <button type="button" class="press tall" data-name="keep-gap" onClick=${keep}>${say('gaps.keep')}</button>
      ${gaps.length > 0 && html`<button type="button" class="press" data-name="drop-gap" onClick=${dropLast}>${say('gaps.drop')}</button>`}`}
    ${way === 'count' && html`
      <${Stepper} name="gap-count" label=${say('gaps.count')} value=${count} from="2" steps=${[1, 5]} low=${2} high=${999}
        onChange=${(/** @type {string} */ text) => counted(text, over)} onWrong=${() => counted(null, over)} />
      <${Stepper} name="gap-over" label=${say('gaps.over')} value=${over} unit=${far} steps=${[1, 5]} low=${1} high=${500}
        onChange=${(/** @type {string} */ text) => counted(count, text)} onWrong=${() => counted(count, null)} />`}`
}
