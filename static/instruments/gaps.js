// Gaps between fasteners: a count over a length and then the widest gap, or one distance after another.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { TextField } from '../frame/text_field.js'
import { shown } from '../frame/amount.js'
import { distances } from './distances.js'
import { gapsReading, inParts, meanAbove } from './gaps_reading.js'
import { unitFor } from './unit_for.js'

/** @param {{item: any, record: any, value: any, onChange: (reading: any) => any}} props */
export function Gaps({ item, record, value, onChange }) {
  const metric = record.job.units === 'SI'
  const near = unitFor(item, record)
  const far = metric ? 'm' : 'ft'
  const most = metric ? 5000 : 200
  const old = (value?.gaps ?? []).map((/** @type {any} */ one) => one.value)
  const listed = value?.gaps && value.count === undefined
  const [known, setKnown] = useState({ way: listed ? 'list' : 'count', count: value?.count === undefined ? null : String(value.count), over: value?.over?.value ?? (metric ? '3' : '10'),
    widest: listed ? null : old[0] ?? null, text: listed ? old.join(' ') : '', wrong: /** @type {Record<string, boolean>} */ ({}) })
  const { values, wrong: unknown } = distances(known.text, near, most)
  const mean = known.way === 'count' ? meanAbove(known, near, far) : null
  const tell = (/** @type {any} */ patch) => {
    const next = { ...known, ...patch }
    setKnown(next)
    onChange(gapsReading(next, near, far, most))
  }
  const wrong = (/** @type {string} */ name, /** @type {boolean} */ on) => ({ wrong: { ...known.wrong, [name]: on } })
  const set = (/** @type {string} */ name) => ({
    onChange: (/** @type {any} */ text) => tell({ [name]: text, ...wrong(name, false) }),
    onWrong: (/** @type {string} */ text) => tell({ [name]: null, ...wrong(name, text.trim() !== '') }), // an empty field is none, not a wrong one
  })
  return html`
    <${Choice} name="gaps-way" label=${say('gaps.way')} value=${known.way} onChange=${(/** @type {string} */ way) => tell({ way, wrong: {} })}
      options=${['count', 'list'].map((one) => ({ value: one, label: say(`gaps.way.${one}`) }))} />
    ${known.way === 'count' && html`
      <${Stepper} name="gap-count" label=${say('gaps.count')} value=${known.count} from="2" steps=${[1, 5]} low=${2} high=${999} ...${set('count')} />
      ${inParts(known.count) && html`<p class="problem" role="alert"><strong>▲ ${say('count.whole', { value: known.count })}</strong></p>`}
      <${Stepper} name="gap-over" label=${say('gaps.over')} value=${known.over} unit=${far} steps=${metric ? [0.5, 5] : [1, 5]} low=${1} high=${500} ...${set('over')} />
      <${Stepper} name="gap-widest" label=${say('gaps.widest')} hint=${say('gaps.widest.hint')} value=${known.widest} unit=${near} steps=${metric ? [5, 50] : [0.25, 1]} low=${metric ? 1 : 0.05} high=${most} ...${set('widest')} />
      ${mean !== null && html`<p class="problem" role="alert" data-name="gaps-mean"><strong>▲ ${say('gaps.mean', { count: known.count, mean: shown({ value: mean, unit: near }) })}</strong></p>`}`}
    ${known.way === 'list' && html`
      <${TextField} name="gap-list" lines=${2} label=${say('gaps.list', { unit: near })} hint=${say(metric ? 'gaps.list.hint.SI' : 'gaps.list.hint.US')} value=${known.text} onChange=${(/** @type {string} */ text) => tell({ text })} />
      ${unknown.length > 0 && html`<p class="problem" role="alert" data-name="gaps-wrong"><strong>▲ ${say('gaps.wrong', { what: unknown.map((/** @type {string} */ one) => `“${one}”`).join(' '), most: shown({ value: most, unit: near }) })}</strong></p>`}
      ${values.length > 0 && html`<p class="figure-line" data-name="gaps-read">${values.map((/** @type {string} */ one) => shown({ value: one, unit: near })).join(' · ')}</p>`}`}`
}
