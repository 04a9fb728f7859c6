// A free outline, corner by corner: tapped on the grid, or said as so far along and so far up.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Stepper } from '../frame/stepper.js'
import { Board } from './board.js'
import { Steps } from './steps_bar.js'
import { scene } from './shape.js'

/** @param {{drawing: any}} props */
export function Laying({ drawing }) {
  const { draft, make } = drawing
  const [next, setNext] = useState(/** @type {any} */ (['0', '0']))
  const steps = draft.unit === 'm' ? [0.1, 1] : [0.5, 5]
  const lay = (/** @type {any} */ corner) => {
    setNext(corner)
    make((/** @type {any} */ old) => ({ points: [...old.points, corner], edges: [...old.edges, null], lengths: [...old.lengths, null] }))
  }
  const set = (/** @type {number} */ k) => (/** @type {string | null} */ value) => setNext(k ? [next[0], value] : [value, next[1]])
  return html`<p class="big">${say('draw.lay')}</p>
    <${Board} ...${scene(draft)} active=${0} selected=${null} onSelect=${() => {}} onMove=${() => {}} onLay=${lay} />
    <${Steps} ...${{ drawing }} />
    ${['x', 'y'].map((axis, k) => html`<${Stepper} key=${axis} name=${`lay-${axis}`} label=${say(`draw.corner.${axis}`)} unit=${draft.unit} steps=${steps} low=${-2000} high=${2000} value=${next[k]} onChange=${set(k)} onWrong=${() => set(k)(null)} />`)}
    <button type="button" class="press" data-name="lay" disabled=${next.includes(null)} onClick=${() => lay(next)}>${say('draw.lay.here', { n: draft.points.length + 1 })}</button>
    <button type="button" class="press" data-name="close-outline" disabled=${draft.points.length < 3} onClick=${() => make({ laying: false })}>${say('draw.lay.close')}</button>`
}
