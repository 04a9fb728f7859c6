// A panel's seam as it lies on the roof, ridge up: its parts in true order, the fixed line between them, a slot in each.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { number } from '../words/number.js'
import { Opening } from './opening.js'
import { Place } from './place.js'

/** @param {{card: any, assembly: any, columns: number[]}} props `columns`: which of the card's, from 0 */
export function Panel({ card, assembly, columns }) {
  const [up, down] = ['ridge', 'eave'].map((side) => card.pieces.find((/** @type {any} */ piece) => piece.side === side))
  const part = (/** @type {any} */ piece) => (/** @type {any} */ one) => html`<div class="seam-part" key=${piece.side + one.name} data-part=${one.name} data-side=${piece.side}>
    <h4>${say(`card.part.${one.name}`)} <span class="seam-far">${say('card.part.from_to', { from: number(one.from.value, ''), to: number(one.to.value, one.to.unit) })}</span></h4>
    <ul class="seam-cells">${columns.map((at) => html`<li key=${card.columns[at].name} class="seam-cell" data-column=${card.columns[at].name} data-degrees=${card.columns[at].metal.value} data-verdict=${one.cells[at].verdict} data-third=${one.cells[at].third}>
      <p class="seam-when">${say(`card.column.${card.columns[at].name}`)} <span class="seam-degrees">${number(card.columns[at].metal.value, card.columns[at].metal.unit)}</span></p>
      <${Opening} ...${{ card, assembly, piece }} cell=${one.cells[at]} />
      <${Place} card=${card} cell=${one.cells[at]} />
    </li>`)}</ul></div>`
  return html`<div class=${columns.length === 1 ? 'seam one' : 'seam'}>
    <p class="edge-name">▲ ${say('toward_ridge')}</p>
    ${up && [...up.parts].reverse().map(part(up))}
    <p class="seam-fixed">${say('card.fixed_line')}</p>
    ${down && down.parts.map(part(down))}
    <p class="edge-name">▼ ${say('toward_eave')}</p>
  </div>`
}
