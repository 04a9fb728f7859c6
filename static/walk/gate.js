// Before anything else: the person says that they cannot fall. No drawn place obliges anyone.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { MainAction } from '../frame/main_action.js'

const HOLDS = 15 * 60_000 // ms: who comes back later stands somewhere else

/** @param {number} at when it was confirmed, 0 for never @param {number} now */
export function confirmed(at, now) {
  return at > 0 && now - at < HOLDS && now >= at
}

const RULES = ['read', 'step_back', 'unsafe', 'weather', 'stand', 'hot', 'edges', 'lines', 'attic']

/** @param {{confirm: () => any, ground?: () => any}} props `ground`: what can be done without going up */
export function Gate({ confirm, ground }) {
  return html`<div class="gate">
    <p class="statement">${say('gate.statement')}</p>
    <${MainAction} name="safe" label=${say('gate.confirm')} run=${confirm} />
    <p class="big">${say('gate.not')}</p>
    ${ground && html`<${MainAction} name="ground" plain label=${say('gate.ground')} under=${say('gate.ground.under')} run=${ground} />`}
    <ul class="rules">${RULES.map((rule) => html`<li key=${rule}>${say(`gate.${rule}`)}</li>`)}</ul>
  </div>`
}
