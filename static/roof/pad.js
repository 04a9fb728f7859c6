// Buttons that move the plan: closer, farther, the whole roof, and four ways.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'

const WAYS = /** @type {[string, string, number, number][]} */ ([['left', '←', 0.4, 0], ['up', '↑', 0, 0.4], ['down', '↓', 0, -0.4], ['right', '→', -0.4, 0]])

/** @param {{seen: any}} props of `useSight` */
export function Pad({ seen }) {
  return html`<div class="pad-row">
    <button type="button" class="press" data-name="farther" disabled=${seen.whole} onClick=${() => seen.zoom(0.5)}><span aria-hidden="true">−</span> ${say('plan.farther')}</button>
    <button type="button" class="press" data-name="closer" onClick=${() => seen.zoom(2)}><span aria-hidden="true">+</span> ${say('plan.closer')}</button>
    <button type="button" class="press" data-name="fit-plan" disabled=${seen.whole} onClick=${() => seen.fit()}>${say('plan.fit')}</button>
  </div>
  <div class="pad-row four">${WAYS.map(([way, sign, dx, dy]) => html`<button type="button" key=${way} class="press" data-name=${`move-${way}`} disabled=${seen.whole} aria-label=${say(`plan.${way}`)} onClick=${() => seen.move(dx, dy)}>${sign}</button>`)}</div>`
}
