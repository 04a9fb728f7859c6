// The marks on the drawing, in words.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { MARKS } from './state.js'

export function Legend() {
  return html`<ul class="legend" aria-label=${say('legend')}>
    ${Object.keys(MARKS).map((state) => html`<li key=${state}><span class=${'mark ' + state} aria-hidden="true">${MARKS[state]}</span> ${say(`state.${state}`)}</li>`)}
    <li><span class="mark line" aria-hidden="true"></span> ${say('fixed_line')}</li>
    <li><span class="mark laid" aria-hidden="true"></span> ${say('legend.placed')}</li>
  </ul>`
}
