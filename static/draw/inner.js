// One outline inside the roof's, an opening or a drawn zone: dragged by its corners, or said as a rectangle.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Stepper } from '../frame/stepper.js'
import { Board } from './board.js'
import { Corner } from './corner.js'
import { Steps } from './steps_bar.js'
import { scene } from './shape.js'
import { before } from './steps.js'
import { split, without } from './outline.js'
import { rectangle, sidesOf } from './rectangle.js'

const SIDES = /** @type {['x', 'y', 'w', 'h']} */ (['x', 'y', 'w', 'h'])

/** @param {{drawing: any, list: 'openings' | 'zone_drawn', at: number}} props */
export function Inner({ drawing, list, at }) {
  const { draft, make } = drawing
  const [selected, select] = useState(/** @type {any} */ (null))
  const ring = draft[list][at].points
  const put = (/** @type {any} */ points, /** @type {string} */ tag) => make((/** @type {any} */ old) => ({ [list]: old[list].map((/** @type {any} */ one, /** @type {number} */ i) => (i === at ? { ...one, points } : one)) }), tag)
  const revert = (/** @type {string} */ tag) => make((/** @type {any} */ old) => ({ [list]: before(old, tag)[list] }), tag)
  const set = (/** @type {number} */ i) => (/** @type {[string, string]} */ corner, /** @type {string} */ tag) => put(ring.map((/** @type {any} */ one, /** @type {number} */ j) => (j === i ? corner : one)), tag)
  const bare = { points: ring, edges: ring.map(() => null), lengths: ring.map(() => null) }
  const sides = sidesOf(ring)
  const steps = draft.unit === 'm' ? [0.1, 1] : [0.5, 5]
  const chosen = selected && selected.at < ring.length ? selected : null
  return html`<${Board} ...${scene(draft)} active=${1 + (list === 'openings' ? 0 : draft.openings.length) + at} selected=${chosen} onSelect=${select} onMove=${(/** @type {number} */ i, /** @type {any} */ corner) => set(i)(corner, '')} />
    <${Steps} ...${{ drawing }} />
    ${chosen?.what === 'edge' && html`<button type="button" class="press" data-name="add-corner" onClick=${() => { put(split(bare, chosen.at).points, ''); select({ what: 'corner', at: chosen.at + 1 }) }}>${say('draw.add_corner')}</button>`}
    ${chosen?.what === 'corner' && html`<${Corner} points=${ring} at=${chosen.at} unit=${draft.unit} onMove=${set(chosen.at)} onWrong=${revert}
      onRemove=${ring.length > 3 ? () => { put(without(bare, chosen.at).points, ''); select(null) } : null} />`}
    ${sides && !chosen && SIDES.map((side) => html`<${Side} key=${side + at} ...${{ side, at, sides, steps, unit: draft.unit, put, revert }} />`)}`
}

/** @param {any} props */
function Side({ side, at, sides, steps, unit, put, revert }) {
  const [wrong, setWrong] = useState(false)
  const tag = `inner/${at}/${side}`
  const put1 = (/** @type {string} */ value) => {
    setWrong(false)
    const { x, y, w, h } = /** @type {any} */ ({ ...sides, [side]: value })
    put(rectangle(x, y, w, h), tag)
  }
  return html`<${Stepper} name=${`inner-${side}`} label=${say(`draw.inner.${side}`)} unit=${unit} steps=${steps} low=${side === 'w' || side === 'h' ? 0.01 : -2000} high=${2000}
    value=${wrong ? null : sides[side]} onChange=${put1} onWrong=${() => { setWrong(true); revert(tag) }} />`
}
