// One line with its working: the pair, what to get, what was found for it, the rule in words and where it comes from.

import { html } from '../frame/view.js'
import { known, say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Part, Screen } from '../frame/screen.js'
import { RESULTS } from '../walk/item_row.js'
import { Working, because } from '../walk/working.js'
import { asked, Found } from './found.js'
import { lineName, toGet } from './name.js'
import { Pair } from './pair.js'

/** @param {{job: string, record: any, area: any, answer: any, found: any, change: (found: any) => any}} props */
export function Line({ job, record, area, answer, found, change }) {
  const get = toGet(answer)
  const fields = asked(answer.line)
  return html`<${Screen} title=${lineName(answer.line)} over=${area.name} back=${path('job', job, 'fit', area.id)} backTo=${say('fit')}>
    <p class="big">${say(`fit.why.${answer.line.split(':')[0]}`)}</p>
    <div class="ledger-alone"><${Pair} answer=${answer} /></div>
    ${get && html`<p class="problem"><strong>▲ ${say('fit.get', { what: get })}</strong></p>`}
    ${fields.length > 0 && html`<${Part} name=${say('fit.found')}>
      ${fields.map((field) => html`<${Found} key=${field} ...${{ field, record, found, change }} />`)}
    <//>`}
    ${answer.rule && answer.reason?.code !== 'missing_input' ? html`<${Working} answer=${answer} />` : html`<${Open} answer=${answer} />`}
  <//>`
}

/** What no rule judged: a person says it, or something is still to be got. @param {{answer: any}} props */
function Open({ answer }) {
  const { verdict, reason, rule } = answer
  return html`<section class=${'working ' + verdict} aria-live="polite" data-name="verdict" data-result=${verdict}>
    <p class="figure-line"><span class=${'mark ' + verdict} aria-hidden="true">${RESULTS[verdict]}</span> ${say(`result.${verdict}`)}</p>
    ${reason && reason.code !== 'missing_input' && html`<p class="big">${because(reason)}</p>`}
    <p>${say(rule && known(`rule.${rule}.formula`) ? `rule.${rule}.formula` : 'fit.basis.said')}</p>
    <p class="hint">${say(rule ? `rule.${rule}.source` : 'fit.basis.approved')}</p>
  </section>`
}
