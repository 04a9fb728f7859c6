// On phones whose browser clears a plain window after some days: the app goes onto the home screen before any work is
// recorded. What is kept here already is sent from here.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { sendNow } from '../sync/engine.js'
import { Screen } from '../frame/screen.js'
import { MainAction } from '../frame/main_action.js'
import { useStanding } from '../frame/strip.js'
import { Language } from './language.js'
import { useSyncStatus } from './sync_status.js'

const STEPS = ['shell.first.share', 'shell.first.add', 'shell.first.open']

/** @param {{look?: () => void}} props `look`: go on in this window all the same, to look and to send */
export function HomeScreenFirst({ look }) {
  const standing = useStanding()
  const sync = useSyncStatus()
  const here = standing ? standing.entries + standing.photos + standing.others : 0
  return html`<${Screen} title=${say('shell.first')} over="Seamwalk">
    <p class="big" data-name="home-screen-first">${say('shell.first.why')}</p>
    <ol class="steps-by-hand">${STEPS.map((key) => html`<li key=${key}>${say(key)}</li>`)}</ol>
    ${here > 0 && html`<p class="big">▲ ${say('shell.first.unsent', { n: here })}</p>`}
    ${look && html`<button type="button" class="press" data-name="look-only" onClick=${look}>${say('shell.first.look')}</button>`}
    <${Language} />
    ${here > 0 && html`<${MainAction} name="send-now" label=${say('phone.send')} under=${sync} run=${sendNow} />`}
  <//>`
}
