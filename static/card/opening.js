// One slot, or one clip's travel, drawn to scale with the ridge up: light where the screw or the tab may be, dark where
// it would come to an end before the metal does. For the eye only; the rulebook said where.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { drawn } from '../frame/amount.js'

const TALL = 132 // of the drawing, for the opening
const WIDE = 100
const MIDDLE = WIDE / 2
const MOST_HEAD = 84

/** @param {{card: any, assembly: any, piece: any, cell: any}} props */
export function Opening({ card, assembly, piece, cell }) {
  const { ridge, eave } = piece.hole
  const screw = card.kind === 'slot'
  const shank = screw ? drawn(assembly.fastener_diameter, card.unit) ?? 0 : 0
  const head = Math.max(drawn(assembly.fastener_head_diameter, card.unit) ?? 2 * shank, shank)
  const scale = Math.min(TALL / (ridge.value - eave.value), screw ? MOST_HEAD / head : Infinity)
  const rim = 8 // a head at the very end stands over it
  const y = (/** @type {number} */ at) => rim + (ridge.value - at) * scale
  const tall = y(eave.value) + rim
  const half = screw ? Math.max(((drawn(assembly.slot_width, card.unit) ?? shank * 1.2) * scale) / 2, 8) : 26
  const top = Math.max(y(cell.high.value + shank / 2), y(ridge.value))
  const low = Math.min(y(cell.low.value - shank / 2), y(eave.value))
  const open = cell.high.value >= cell.low.value && cell.verdict !== 'not_determinable'
  const sound = cell.verdict === 'pass'
  const thirds = [1, 2].map((n) => (screw ? (2 * n - 3) * (ridge.value - eave.value - shank) / 6 : eave.value + (n * (ridge.value - eave.value)) / 3))
  const cut = `M${MIDDLE - half} ${y(ridge.value) + (screw ? half : 0)}${screw ? `a${half} ${half} 0 0 1 ${2 * half} 0` : `h${2 * half}`}V${y(eave.value) - (screw ? half : 0)}${screw ? `a${half} ${half} 0 0 1 ${-2 * half} 0` : `h${-2 * half}`}z`
  const id = `cut-${scale}-${half}-${tall}`.replace(/[^\w-]/g, '_')
  return html`<svg class="opening" viewBox=${`0 0 ${WIDE} ${tall}`} role="img" aria-label=${say(`card.drawn.${card.kind}`)}>
    <clipPath id=${id}><path d=${cut} /></clipPath>
    <path d=${cut} class="opening-shut" />
    ${open && html`<rect clip-path=${`url(#${id})`} x=${MIDDLE - half} y=${top} width=${2 * half} height=${Math.max(low - top, 2)} class="opening-free" />`}
    <path d=${cut} class="opening-edge" />
    <path d=${thirds.map((at) => `M${MIDDLE + half + 2} ${y(at)}h8M${MIDDLE - half - 2} ${y(at)}h-8`).join('')} class="opening-third" />
    <path d=${`M${MIDDLE - half - 16} ${y(0)}h14M${MIDDLE + half + 2} ${y(0)}h14`} class="opening-zero" />
    ${sound
      ? html`<g class="opening-aim" style=${{ transform: `translateY(${y(cell.aim.value)}px)` }}>
          ${screw
            ? html`<circle cx=${MIDDLE} r=${(head * scale) / 2} class="opening-head" /><circle cx=${MIDDLE} r=${(shank * scale) / 2} class="opening-shank" />`
            : html`<path d=${`M${MIDDLE - half - 12} 0h${2 * half + 24}`} class="opening-tab" />`}
        </g>`
      : html`<path d=${`M${MIDDLE - 34} ${tall / 2 - 34}l68 68m0 -68l-68 68`} class="opening-no" />`}
  </svg>`
}
