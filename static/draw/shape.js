// The outline on its board with what was tapped below it: an edge or a corner. A plain rectangle asks for two lengths.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { drawn } from '../frame/amount.js'
import { Stepper } from '../frame/stepper.js'
import { heldAt, seams, strips } from '../roof/strips.js'
import { Board } from './board.js'
import { Corner } from './corner.js'
import { Edge } from './edge.js'
import { Steps } from './steps_bar.js'
import { long, moved, numbers, over, text, without } from './outline.js'
import { before } from './steps.js'

/** @param {{drawing: any, selected: any, select: any, assembly: any, layout: any}} props */
export function Outline({ drawing, selected, select }) {
  const { draft, make, stretch } = drawing
  const count = draft.points.length
  const chosen = selected && selected.at < count ? selected : null
  const walk = (/** @type {number} */ by) => () => select({ what: 'edge', at: ((chosen?.at ?? (by > 0 ? -1 : 0)) + by + count) % count })
  const move = (/** @type {number} */ at) => (/** @type {[string, string]} */ corner, /** @type {string} */ tag) => make((/** @type {any} */ old) => moved(old, at, corner), tag)
  const turn = () => make((/** @type {any} */ old) => {
    const turned = over([old.points])
    const rings = (/** @type {any[]} */ list) => list.map((one) => ({ ...one, points: turned(one.points) }))
    return { points: turned(old.points), openings: rings(old.openings), zone_drawn: rings(old.zone_drawn) }
  })
  const side = (/** @type {number} */ i, /** @type {string} */ name) => html`<${Stepper} name=${name} label=${say(`draw.${name}`)} unit=${draft.unit} steps=${[1, 10]} low=${0.1} high=${2000}
    value=${draft.lengths[i] === '' ? null : draft.lengths[i] ?? text(long(draft.points, i))} onChange=${(/** @type {string} */ one) => stretch(i, one)} onWrong=${() => stretch(i, '')} />`
  return html`<p>${say('draw.tap')}</p>
    <${Board} ...${scene(draft)} active=${0} selected=${chosen} onSelect=${select} onMove=${(/** @type {number} */ at, /** @type {any} */ corner) => move(at)(corner, '')} />
    <${Steps} ...${{ drawing }} />
    <div class="ways"><button type="button" class="press" data-name="edge-before" onClick=${walk(-1)}><span aria-hidden="true">↶</span> ${say('draw.edge.before')}</button>
      <button type="button" class="press" data-name="edge-after" onClick=${walk(1)}><span aria-hidden="true">↷</span> ${say('draw.edge.after')}</button>
      <button type="button" class="press" data-name="turn-over" onClick=${turn}><span aria-hidden="true">⇅</span> ${say('draw.over')}</button></div>
    ${draft.form === 'rectangle' && !chosen && html`${side(0, 'width')}${side(1, 'length')}`}
    ${chosen?.what === 'edge' && html`<${Edge} ...${{ draft, make, stretch, select }} at=${chosen.at} />`}
    ${chosen?.what === 'corner' && html`<${Corner} points=${draft.points} at=${chosen.at} unit=${draft.unit} onMove=${move(chosen.at)}
      onWrong=${(/** @type {string} */ tag) => make((/** @type {any} */ old) => { const { points, lengths } = before(old, tag); return { points, lengths } }, tag)}
      onRemove=${count > 3 ? () => { make((/** @type {any} */ old) => ({ ...without(old, chosen.at), form: 'free' })); select(null) } : null} />`}`
}

/** What the board draws of a draft. @param {any} draft */
export function scene(draft) {
  const rings = [{ points: draft.points, kind: 'outline' }, ...draft.openings.map((/** @type {any} */ one) => ({ ...one, kind: 'opening' })),
    ...draft.zone_drawn.map((/** @type {any} */ one) => ({ ...one, kind: 'zone' }))]
  const wide = draft.coverage === null ? null : drawn({ value: draft.coverage, unit: draft.coverage_unit }, draft.unit)
  const points = numbers(draft.points)
  const panels = strips(points, wide ?? 0, draft.start)
  const end = { eave: 'low', ridge: 'high' }[/** @type {string} */ (draft.fixed)] ?? null
  const held = draft.fixed === 'unknown' || draft.fixed_at === null ? [] : heldAt([points], panels, end, Number(draft.fixed_at))
  return { rings, edges: draft.edges, unit: draft.unit, panels, seams: seams(panels, draft.start), held }
}
