// A browser that cannot keep work safely is told so before any work is done in it.

import { html } from '../frame/view.js'
import { known, say } from '../words/say.js'
import { Screen } from '../frame/screen.js'

/** @param {{reason: string}} props */
export function Barred({ reason }) {
  return html`<${Screen} title=${say('barred')}>
    <p class="big">${known(reason) ? say(reason) : reason}</p>
    <p>${say('barred.way_out')}</p>
  <//>`
}
