// The reading drawn: the slot, ridge end up, and the screw in it. For the eye only; the rulebook judges.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { metres } from '../frame/amount.js'

const THIRDS = /** @type {Record<string, number>} */ ({ toward_ridge: 0.2, middle: 0.5, toward_eave: 0.8 })
const HIDDEN = /** @type {Record<string, number>} */ ({ ridge: 0.12, eave: 0.88 })

/** Share of the slot from its ridge end. @param {any} reading */
function placed(reading) {
  if (reading.third) return THIRDS[reading.third]
  if (reading.end_hidden) return HIDDEN[reading.end_hidden]
  const { ridge_end: [ax, ay], eave_end: [bx, by], screw: [px, py] } = reading.taps
  return ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / (((bx - ax) ** 2 + (by - ay) ** 2) || 1)
}

/** @param {{assembly: any, reading: any}} props */
export function SlotDrawing({ assembly, reading }) {
  const slot = metres(assembly?.slot_length) ?? 0.0254
  const head = (metres(assembly?.fastener_head_diameter) ?? slot * 0.4) / slot * 200
  const y = 20 + 200 * placed(reading)
  return html`<figure class="slot-figure"><svg viewBox="0 0 240 240" role="img" aria-label=${say('slot.drawn')}>
    <text x="120" y="14" text-anchor="middle" class="plan-word">${say('slot.ridge')}</text>
    <rect x="100" y="20" width="40" height="200" rx="20" class="slot-hole" />
    <circle cx="120" cy=${y} r=${head / 2} class="slot-head" />
    <line x1="106" x2="134" y1=${y} y2=${y} class="slot-cross" /><line x1="120" x2="120" y1=${y - 14} y2=${y + 14} class="slot-cross" />
    <text x="120" y="238" text-anchor="middle" class="plan-word">${say('slot.eave')}</text>
  </svg></figure>`
}
