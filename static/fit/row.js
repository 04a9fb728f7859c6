// One line of the ledger: what it is, its pair, and where it stands open what to get. A touch shows its working.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { RESULTS } from '../walk/item_row.js'
import { lineName, toGet } from './name.js'
import { Pair } from './pair.js'

/** @param {{job: string, area: any, answer: any}} props */
export function Row({ job, area, answer }) {
  const get = toGet(answer)
  return html`<li><a class=${'press ledger ' + answer.verdict} href=${path('job', job, 'fit', area.id, answer.line)}
    data-name="fit-line" data-line=${answer.line} data-result=${answer.verdict}>
    <span class="head"><span class=${'mark ' + answer.verdict} aria-hidden="true">${RESULTS[answer.verdict]}</span>
      <span class="label">${lineName(answer.line)}</span></span>
    <${Pair} answer=${answer} />
    ${get && html`<span class="under">${say('fit.get', { what: get })}</span>`}
  </a></li>`
}
