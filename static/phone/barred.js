// A browser that cannot keep work safely is told so before any work is done in it.

import { html } from '../frame/view.js'
import { known, say } from '../words/say.js'
import { Screen } from '../frame/screen.js'
import { MainAction } from '../frame/main_action.js'
import { Language } from './language.js'

/** @param {{reason: string}} props */
export function Barred({ reason }) {
  const way = known(`${reason}.way_out`) ? `${reason}.way_out` : 'barred.way_out'
  return html`<${Screen} title=${say('barred')}>
    <div data-name="barred" data-reason=${reason} role="alert">
      <p class="big">▲ ${known(reason) ? say(reason) : reason}</p>
      <p>${say(way)}</p>
    </div>
    <${Language} />
    <${MainAction} name="try-again" label=${say('barred.again')} run=${() => location.reload()} />
  <//>`
}
