// Sheet metal under a micrometer: the reading, whether it holds the coating too, and how thick that is.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { stepsOf, unitFor } from './unit_for.js'

/** @param {{item: any, record: any, area: any, value: any, onChange: (reading: any) => any}} props */
export function Micrometer({ item, record, area, value, onChange }) {
  const unit = unitFor(item, record)
  const [size, setSize] = useState(/** @type {string | null} */ (value?.value?.value ?? null))
  const [coated, setCoated] = useState(value ? (value.coated ? 'yes' : 'no') : '')
  const [coating, setCoating] = useState(/** @type {string | null} */ (value?.coating?.value ?? null))
  const tell = (/** @type {string | null} */ read, /** @type {string} */ over, /** @type {string | null} */ thick) => {
    setSize(read)
    setCoated(over)
    setCoating(thick)
    const known = over === 'yes' && thick !== null ? { coating: { value: thick, unit } } : {}
    onChange(read === null || !over ? null : { value: { value: read, unit }, coated: over === 'yes', ...known })
  }
  const assembly = record.assemblies[area?.assembly]
  const steps = stepsOf(item, record, unit, true)
  return html`
    ${assembly && html`<p class="hint" data-name="gauge">${say('micrometer.gauge', { gauge: assembly.gauge, system: assembly.gauge_system, area: area.name })}</p>`}
    <${Stepper} name="reading" label=${say('micrometer.reading')} value=${size} unit=${unit} steps=${steps} low=${0} high=${1000}
      onChange=${(/** @type {string} */ text) => tell(text, coated, coating)} onWrong=${() => tell(null, coated, coating)} />
    <${Choice} name="coated" label=${say('micrometer.coated')} value=${coated} onChange=${(/** @type {string} */ one) => tell(size, one, coating)}
      options=${['no', 'yes'].map((one) => ({ value: one, label: say(`micrometer.coated.${one}`) }))} />
    ${coated === 'yes' && html`<${Stepper} name="coating" label=${say('micrometer.coating')} hint=${say('micrometer.coating.hint')} value=${coating} unit=${unit} steps=${steps} low=${0} high=${100}
      onChange=${(/** @type {string} */ text) => tell(size, coated, text)} onWrong=${() => tell(size, coated, null)} />`}`
}
