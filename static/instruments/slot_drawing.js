// A verdict drawn: the slot or the clip's travel, ridge end up, where it may stand now, and where it stands.
// For the eye only; the rulebook judges.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { number } from '../words/number.js'
import { drawn } from '../frame/amount.js'
import { toward, turned } from './toward.js'

const TALL = 240
const TOP = 36
const MIDDLE = TOP + TALL / 2

/** @param {{answer: any}} props an answer of `slot@1` or `clip@1` */
export function SlotDrawing({ answer }) {
  const seen = turned(answer)
  if (!seen) return null
  const { unit, low, high, aim, at, bound } = seen
  const given = answer.inputs ?? {}
  const slot = drawn(given.slot, unit)
  const half = slot ? slot / 2 : Math.max(drawn(given.travel_outward, unit) ?? 1, drawn(given.travel_inward, unit) ?? 1)
  const scale = TALL / 2 / half
  const y = (/** @type {number} */ offset) => MIDDLE - Math.min(Math.max(offset, -1.15 * half), 1.15 * half) * scale
  const head = ((drawn(given.head ?? given.shank, unit) ?? half * 0.3) / 2) * scale
  const side = 150 + Math.max(head, 22) + 16 // how far the reading may be off, clear of head and slot
  const open = low <= high
  return html`<figure class="slot-figure">
    <div><p class="edge-name" aria-hidden="true">▲ ${say('toward_ridge')}</p>
    <svg viewBox=${`30 0 220 ${2 * MIDDLE}`} role="img" aria-label=${say('slot.drawn')}>
      <rect x="128" y=${TOP} width="44" height=${TALL} rx=${slot ? 22 : 2} class="slot-hole" />
      ${open && html`<rect x="70" y=${y(high)} width="46" height=${Math.max(y(low) - y(high), 2)} class="slot-window" />
        <path d=${`M58 ${y(high)}H172M58 ${y(low)}H172`} class="slot-edge" />
        <path d=${`M44 ${y(aim)}l14 -9v18zM58 ${y(aim)}H116`} class="slot-aim" />`}
      ${at !== null && html`<circle cx="150" cy=${y(at)} r=${Math.max(head, 10)} class="slot-head" />
        <path d=${`M140 ${y(at)}H160M150 ${y(at) - 10}V${y(at) + 10}`} class="slot-cross" />
        <path d=${`M${side} ${y(at + bound)}V${y(at - bound)}m-9 0h18M${side - 9} ${y(at + bound)}h18`} class="slot-bound" />`}
    </svg>
    <p class="edge-name" aria-hidden="true">▼ ${say('toward_eave')}</p></div>
    <figcaption><dl class="facts">
      ${at !== null && html`<div><dt>${say(slot ? 'slot.screw_at' : 'slot.tab_at')}</dt><dd class="number">${toward(at, unit)}</dd></div>
        <div><dt>${say('slot.bound')}</dt><dd>${say('slot.either_way', { distance: number(bound, unit) })}</dd></div>`}
      <div><dt>${say('slot.window')}</dt><dd>${open ? say('slot.from_to', { from: toward(low, unit), to: toward(high, unit) }) : say('slot.no_window')}</dd></div>
      ${open && html`<div><dt>${say('slot.aim')}</dt><dd>${toward(aim, unit)}</dd></div>`}
    </dl></figcaption>
  </figure>`
}
