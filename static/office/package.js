// The evidence package of a job: what is in it, what is missing from it, and its download. It is put together by the
// office at the moment of asking and never lies on the phone.

import { html } from '../frame/view.js'
import { language, say } from '../words/say.js'
import { path } from '../frame/route.js'
import { MainAction } from '../frame/main_action.js'
import { Screen } from '../frame/screen.js'
import { tell, useAsked } from './asked.js'
import { Told } from './told.js'

const HELD = ['entries', 'photos', 'reports', 'definitions', 'keys', 'kept_apart']
const LACKS = ['missing_photos', 'damaged_photos', 'missing_definitions', 'missing_reports']

/** @param {{job: string, record: any}} props */
export function Package({ job, record }) {
  const address = `/api/jobs/${job}/package`
  const asked = useAsked(address)
  // Asked anew: its address is good for hours, and this screen may have been open for days.
  const fetchIt = async () => save((await tell('GET', address)).url)
  return html`<${Screen} title=${say('package')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name}>
    <p>${say('package.what')}</p>
    <${Told} asked=${asked}>${(/** @type {any} */ { bytes, counts }) => html`
      <p class="big" data-name="package-size">${say('package.size', { size: size(bytes) })}</p>
      <ul class="rows" data-name="package-counts">${HELD.map((name) => html`<li key=${name} class="row" data-count=${name}>
        <strong>${counts[name].toLocaleString(language())}</strong> <span>${say(`package.count.${name}`)}</span></li>`)}</ul>
      ${LACKS.filter((name) => counts[name] > 0).map((name) => html`<p key=${name} class="problem" data-name="package-lacks" data-lack=${name}><strong>▲ ${say(`package.lacks.${name}`, { n: counts[name] })}</strong></p>`)}
      <p>${say('package.check')}</p>
      <p class="hint">${say('package.limits')}</p>
      <${MainAction} name="fetch-package" label=${say('package.fetch')} under=${say('package.fetch.under')} done=${say('package.begun')} run=${fetchIt} />`}
    <//>
  <//>`
}

/** Left to the browser: it shows how far it is, and goes on after a break. @param {string} url */
function save(url) {
  const link = document.createElement('a')
  link.href = url
  link.download = ''
  document.body.append(link)
  link.click()
  link.remove()
}

/** @param {number} bytes in the reader's own digits, to be compared with the room on a disk */
function size(bytes) {
  const [unit, of] = bytes < 1e6 ? ['KB', 1e3] : bytes < 1e9 ? ['MB', 1e6] : ['GB', 1e9]
  return `${(bytes / of).toLocaleString(language(), { maximumSignificantDigits: 3 })} ${unit}`
}
