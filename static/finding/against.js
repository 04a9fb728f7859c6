// What was required against what was found, with its working as it was judged.

import { html } from '../frame/view.js'
import { pick, say } from '../words/say.js'
import { Facts } from '../frame/facts.js'
import { recorded } from '../walk/verdict.js'
import { Working } from '../walk/working.js'
import { askedBy, note } from './told.js'

/** @param {{definitions: any[], finding: any}} props */
export function Against({ definitions, finding }) {
  const { item } = askedBy(definitions, finding)
  const hand = finding.source === 'hand'
  const required = hand ? finding.required : item ? `${pick(item.question)} ${pick(item.basis)}` : finding.item
  const found = hand ? finding.found : `${say('result.fail')}${note(finding) ? ` · “${note(finding)}”` : ''}`
  return html`<div class="stack" data-name="against">
    <${Facts} rows=${[[say('finding.required'), required], [say('finding.found'), found]]} />
    ${item && html`<details><summary class="press" data-name="why">${say('item.why')}</summary><p>${pick(item.why)}</p><p>${pick(item.how)}</p></details>`}
    ${!hand && finding.required?.rule && html`<${Working} then answer=${recorded({ result: 'fail', ...finding.required })} />`}
  </div>`
}

/** A reading taken later, as it was judged then. @param {{verdict: any}} props */
export function Judged({ verdict }) {
  return verdict?.rule ? html`<details><summary class="press" data-name="judged">${say('item.working')}: ${say(`result.${verdict.result}`)}</summary><${Working} then answer=${recorded(verdict)} /></details>` : null
}
