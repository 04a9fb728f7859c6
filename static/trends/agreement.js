// The foreman's looks beside the audit's: how many said the same, kappa with its range, and what could not be compared.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { number } from '../words/number.js'
import { path } from '../frame/route.js'
import { Part } from '../frame/screen.js'
import { percent } from '../lot/name.js'
import { Blind } from './blind.js'

export const CELLS = ['both_bad', 'foreman_only', 'audit_only', 'both_good']
const MARKS = /** @type {Record<string, string>} */ ({ both_bad: '✕✕', foreman_only: '✕✓', audit_only: '✓✕', both_good: '✓✓' })
export const APART = ['same_person', 'mended', 'undecided']

/** @param {{job: string, told: any}} props */
export function Agreement({ job, told }) {
  const { looks, panels, apart } = told.agreement
  const left = APART.filter((why) => apart[why].length > 0)
  return html`<${Part} name=${say('trends.agreement')}>
    <p>${say('trends.agreement.what')}</p>
    <${Blind} names=${told.blind.agreement} />
    <div class="trend-two">${[['panels', panels], ['looks', looks]].map(([kind, one]) => html`<${Judged} key=${kind} kind=${kind} one=${one} />`)}</div>
    ${looks.n > 0 && html`<p>${say('trends.agreement.careful')}</p>
    <ul class="rows beside" data-name="cells">${CELLS.map((cell) => html`<li key=${cell}><a class="press" href=${path('job', job, 'trends', 'pairs', cell)} data-name="cell" data-cell=${cell} data-n=${looks[cell]}>
      <span class="trend-cell" aria-hidden="true">${MARKS[cell]}</span><span class="label">${looks[cell]} ${say(`trends.cell.${cell}`)}</span><span class="go" aria-hidden="true">→</span></a></li>`)}</ul>`}
    ${left.length > 0 && html`<h3>${say('trends.apart')}</h3><ul class="rows beside">${left.map((why) => html`<li key=${why}><a class="press" href=${path('job', job, 'trends', 'pairs', why)} data-name="apart"><span class="label">${apart[why].length} ${say(`trends.apart.${why}`)}</span><span class="go" aria-hidden="true">→</span></a></li>`)}</ul>`}
  <//>`
}

/** @param {{kind: string, one: any}} props */
function Judged({ kind, one }) {
  const kappa = (/** @type {number} */ value) => number(value, '', 2)
  return html`<div class="stack" data-name="judged" data-kind=${kind} data-n=${one.n}>
    <h3>${say(`trends.agreement.${kind}`)}</h3>
    ${one.n > 0 && html`<p>${say('trends.agreement.told', { n: one.n, share: percent(one.agreement) })}</p>`}
    ${one.kappa !== null && html`<p class="big">${say('trends.agreement.kappa', { kappa: kappa(one.kappa) })} ${one.low !== null && say('trends.agreement.range', { low: kappa(one.low), high: kappa(one.high) })}</p><${Scale} one=${one} />`}
    ${one.because && html`<p>△ ${say(`reason.${one.because.code}`, one.because.facts)}</p>`}
  </div>`
}

/** Kappa on its own scale, from −1 over 0 to 1. @param {{one: any}} props */
function Scale({ one }) {
  const at = (/** @type {number} */ value) => `${50 + 50 * value}%`
  return html`<svg class="trend-range" width="100%" height="34" aria-hidden="true" focusable="false">
      <line class="trend-axis" x1="0" x2="100%" y1="33" y2="33" /><line class="trend-mean" x1="50%" x2="50%" y1="0" y2="34" />
      ${one.low !== null && html`<line class="trend-limits" x1=${at(one.low)} x2=${at(one.high)} y1="17" y2="17" /><line class="trend-end" x1=${at(one.low)} x2=${at(one.low)} y1="9" y2="25" /><line class="trend-end" x1=${at(one.high)} x2=${at(one.high)} y1="9" y2="25" />`}
      <svg x=${at(one.kappa)} y="17"><path class="trend-point" d="M0-8A8 8 0 1 1 0 8A8 8 0 1 1 0-8Z" /></svg></svg>
    <p class="curve-across trend-kappa" aria-hidden="true"><span>−1</span><span>0</span><span>1</span></p>`
}
