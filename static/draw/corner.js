// One corner of an outline: where it is, typed or stepped, and away with it.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Stepper } from '../frame/stepper.js'

/** @param {{points: any, at: number, unit: string, onMove: (corner: [string, string], tag: string) => any, onWrong: (tag: string) => any, onRemove: (() => any) | null}} props */
export function Corner({ points, at, unit, onMove, onWrong, onRemove }) {
  const [wrong, setWrong] = useState('')
  const here = points[at]
  const steps = unit === 'm' ? [0.1, 1] : [0.5, 5]
  return html`<div class="stack" data-name="corner-panel" data-at=${at}>
    <h3>${say('draw.corner', { n: at + 1, of: points.length })}</h3>
    ${['x', 'y'].map((axis, k) => html`<${Stepper} key=${axis + at} name=${`corner-${axis}`} label=${say(`draw.corner.${axis}`)} unit=${unit} steps=${steps} low=${-2000} high=${2000}
      value=${wrong === axis ? null : here[k]} onWrong=${() => { setWrong(axis); onWrong(`corner/${at}/${axis}`) }}
      onChange=${(/** @type {string} */ value) => { setWrong(''); onMove(k ? [here[0], value] : [value, here[1]], `corner/${at}/${axis}`) }} />`)}
    ${onRemove && html`<button type="button" class="press" data-name="remove-corner" onClick=${onRemove}>${say('draw.remove_corner')}</button>`}
  </div>`
}
