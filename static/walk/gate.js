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

/** @param {{confirm: () => any}} props */
export function Gate({ confirm }) {
  return html`<div class="gate">
    <p class="statement">${say('gate.statement')}</p>
    <${MainAction} name="safe" label=${say('gate.confirm')} run=${confirm} />
    <p class="big">${say('gate.not')}</p>
    <ul class="rules">${RULES.map((rule) => html`<li key=${rule}>${say(`gate.${rule}`)}</li>`)}</ul>
  </div>`
}
