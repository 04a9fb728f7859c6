// Stands before every screen that records: what this window must have, or what must be known of it, first.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { isAndroid } from '../shell/system.js'
import { homeScreenFirst, recordingHere, warned } from '../shell/recording.js'
import { Screen } from '../frame/screen.js'
import { MainAction } from '../frame/main_action.js'
import { HomeScreenFirst } from './home_screen_first.js'
import { Install } from './install.js'

/** @param {{records: boolean, children?: any}} props `records`: the screen keeps work */
export function BeforeRecording({ records, children }) {
  const [here, setHere] = useState(isAndroid() || homeScreenFirst() ? '' : 'yes')
  const read = () => recordingHere().then(setHere, () => setHere(homeScreenFirst() ? 'install' : 'yes')) // of the storage's trouble the strip tells
  useEffect(() => { if (records && here !== 'yes') read() }, [records, location.hash])
  if (!records) return children
  if (here === 'install') return html`<${HomeScreenFirst} />`
  if (here === 'finish') return html`<p class="part-seen" role="status" data-name="finish-here"><span aria-hidden="true">▲</span> ${say('shell.first.finish')}</p>${children}`
  if (here === 'warn') return html`<${NotKept} read=${read} />`
  return here === 'yes' ? children : null
}

/** @param {{read: () => any}} props */
function NotKept({ read }) {
  return html`<${Screen} title=${say('shell.warn')}>
    <p class="big" data-name="not-kept">▲ ${say('shell.not_kept')}</p>
    <${Install} promised=${read} />
    <${MainAction} name="understood" label=${say('shell.warn.understood')} run=${() => warned().then(read)} />
  <//>`
}
