// North, marked on every plan: a needle and its letter.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'

/** @param {{x: number, y: number, large: number}} props */
export function North({ x, y, large }) {
  return html`<g class="north" transform=${`translate(${x} ${y}) scale(${large})`}><circle cy="4" r="27" /><path d="M0 -20L8 12L0 5L-8 12Z" /><text text-anchor="middle" y="30">${say('plan.north')}</text></g>`
}
