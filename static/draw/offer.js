// A strip's width offered from a published rule, with its source: a proposal, taken with a tap or left.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { number } from '../words/number.js'
import { unitOf } from '../frame/amount.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { ask } from '../rules/ask.js'
import { text } from './outline.js'

const EDITIONS = ['ASCE 7-02', 'ASCE 7-10']

/** @param {{record: any, unit: string, take: (width: string, standard: string) => any}} props */
export function Offer({ record, unit, take }) {
  const far = unitOf(record.job, 'far')
  const [told, setTold] = useState(/** @type {any} */ ({ least_width: null, height: null, edition: '' }))
  const [width, setWidth] = useState(/** @type {any} */ (null))
  const set = (/** @type {string} */ name) => (/** @type {any} */ value) => setTold((/** @type {any} */ old) => ({ ...old, [name]: value }))
  useEffect(() => {
    let here = true
    setWidth(null)
    if (told.least_width && told.height && told.edition) {
      ask({ call: 'judge', rule: 'edge_width', units: unit === 'm' ? 'SI' : 'US', inputs: { least_width: { value: told.least_width, unit: far }, height: { value: told.height, unit: far }, edition: told.edition } })
        .then((answer) => { if (here) setWidth(inUnit(answer.values.width, unit)) }, () => {})
    }
    return () => { here = false }
  }, [told])
  return html`<details class="stack"><summary class="press" data-name="offer">${say('draw.offer')}</summary>
    <p>${say('draw.offer.what')}</p>
    <${Stepper} name="least_width" label=${say('draw.offer.least_width')} unit=${far} steps=${[1, 10]} low=${1} high=${5000} value=${told.least_width} onChange=${set('least_width')} onWrong=${() => set('least_width')(null)} />
    <${Stepper} name="height" label=${say('draw.offer.height')} unit=${far} steps=${[1, 10]} low=${1} high=${1000} value=${told.height} onChange=${set('height')} onWrong=${() => set('height')(null)} />
    <${Choice} name="edition" label=${say('draw.offer.edition')} value=${told.edition} onChange=${set('edition')} options=${EDITIONS.map((value) => ({ value, label: value }))} />
    ${width && html`<p class="figure-line" data-name="offered">${number(width, unit)}</p><p>${say('rule.edge_width@1.formula')}</p><p class="hint">${say('rule.edge_width@1.source')}</p>
      <button type="button" class="press" data-name="take-offer" onClick=${() => take(width, told.edition)}>${say('draw.offer.take')}</button>`}
  </details>`
}

const IN = /** @type {Record<string, number>} */ ({ in: 12, ft: 1, mm: 1000, m: 1 })

/** The offer as a number to be typed: rounded to what a tape tells. @param {{value: number, unit: string}} width @param {string} unit */
function inUnit(width, unit) {
  const value = width.unit === unit ? width.value : width.value / (IN[width.unit] ?? 1) * (IN[unit] ?? 1)
  return text(Math.round(value * 1000) / 1000)
}
