// The pair of a line, large: what is asked for, what this roof has, the bar, and what is to spare.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { number } from '../words/number.js'
import { sides } from './sides.js'
import { Bar } from './bar.js'

/** Whose the second number is, where it is not simply this roof's. */
const HAS = /** @type {Record<string, string>} */ ({ approval: 'fit.today', fixed_place: 'fit.held', zone: 'fit.slots' })

/** @param {{answer: any}} props of one line */
export function Pair({ answer }) {
  const { pair } = answer
  const { limit, found, margin } = sides(answer)
  const open = pair.found === undefined && answer.verdict === 'not_determinable'
  return html`<span class=${`ledger-pair ${pair.sense} ${answer.verdict}`}>
    ${pair.limit !== undefined && html`<span class="side"><span class="ask">${say(`fit.sense.${pair.sense}`)}</span><strong>${limit}</strong></span>`}
    ${pair.found !== undefined && html`<span class="side"><span class="ask">${say(HAS[answer.line.split(':')[0]] ?? 'fit.has')}</span><strong>${found}</strong></span>`}
    ${open && pair.limit !== undefined && html`<span class="side"><span class="ask">${say('fit.has')}</span><span>${say('fit.not_found')}</span></span>`}
    ${(open || pair.found !== undefined) && html`<${Bar} pair=${pair} />`}
    ${margin && html`<strong class="margin">${margin}</strong>`}
    ${pair.other && html`<span class="ask">${say('fit.centred', { length: number(pair.other.value, pair.other.unit) })}</span>`}
  </span>`
}
