// Where the screw or the tab belongs, in words beside its drawing: toward the ridge or the eave, never plus or minus.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { spoken } from './amount.js'
import { because } from './because.js'

const ARROWS = /** @type {Record<string, string>} */ ({ ridge: '▲', eave: '▼', middle: '●' })

/** @param {{card: any, cell: any}} props */
export function Place({ card, cell }) {
  if (cell.verdict !== 'pass') {
    const no = cell.verdict === 'not_determinable' ? because(cell.reason) : say('card.no_place', { error: spoken(card.error) })
    return html`<p class="place no">✕ ${no}</p>`
  }
  const { toward } = cell.mark
  return html`<p class="place"><strong>${ARROWS[toward]} <span class="place-mark">${toward === 'middle' ? say('card.middle') : spoken(cell.mark)}</span></strong>
    ${toward !== 'middle' && html`<span>${say(`toward_${toward}`)}</span>`}
    <span class="place-third">${say(`card.third.${cell.third}`)}</span></p>`
}
