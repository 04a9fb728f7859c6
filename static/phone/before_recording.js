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
  const [here, setHere] = useState(isAndroid() ? '' : 'yes')
  const read = () => recordingHere().then(setHere)
  useEffect(() => { if (records && here !== 'yes') read() }, [records])
  if (!records) return children
  if (homeScreenFirst()) return html`<${HomeScreenFirst} />`
  if (here === 'warn') return html`<${NotKept} read=${read} />`
  return here === 'yes' ? children : null
}

/** @param {{read: () => any}} props */
function NotKept({ read }) {
  return html`<${Screen} title=${say('shell.warn')}>
    <p class="big" data-name="not-kept">▲ ${say('shell.not_kept')}</p>
    <${Install} />
    <${MainAction} name="understood" label=${say('shell.warn.understood')} run=${() => warned().then(read)} />
  <//>`
}
