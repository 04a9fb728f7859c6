// One lot in the row of its series: what was found, how far it may be from the truth, and what became of the lot.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { percent } from '../lot/name.js'

export const SYMBOLS = /** @type {Record<string, string>} */ ({ A: '✓', R: '✕', M: '~', N: '?', open: '…' })
const STANDS = /** @type {Record<string, string>} */ ({ higher: '▲', lower: '▽' })

/** @param {{job: string, record: any, point: any, whole: any, reach: number, n: number}} props */
export function LotRow({ job, record, point, whole, reach, n }) {
  const symbol = point.symbol ?? 'open'
  const area = record.areas[record.lots[point.lot]?.population[0]?.area]?.name
  const facts = [point.n > 0 && say('trends.shares.limits', { low: percent(point.low), high: percent(point.high) }), point.unknown > 0 && say('trends.shares.unknown', { n: point.unknown }), say(`trends.symbol.${symbol}`), area]
  return html`<li><a class=${`press tall trend symbol-${symbol}`} href=${path('job', job, 'lot', point.lot)} data-name="trend-lot" data-found=${point.found} data-n=${point.n}>
    <span class=${symbol === 'R' ? 'mark bad' : symbol === 'A' ? 'mark' : 'mark open'} aria-hidden="true">${SYMBOLS[symbol]}</span>
    <span class="label">${n}. ${point.day}: ${say('trends.shares.point', { found: point.found, n: point.n })}<span class="under">${facts.filter(Boolean).join(' · ')}</span>
      ${point.stands && html`<span class="under"><strong>${STANDS[point.stands]} ${say(`trends.shares.${point.stands}`)}</strong></span>`}</span><span class="go" aria-hidden="true">→</span>
    <${Range} ...${{ point, whole, reach, symbol }} /></a></li>`
}

/** @param {{point: any, whole: any, reach: number, symbol: string}} props */
function Range({ point, whole, reach, symbol }) {
  const at = (/** @type {number} */ share) => `${Math.min(100, (100 * share) / reach)}%`
  const wide = (/** @type {any} */ one) => `${Math.min(100, (100 * one.high) / reach) - Math.min(100, (100 * one.low) / reach)}%`
  return html`<svg class="trend-range" width="100%" height="34" aria-hidden="true" focusable="false">
    ${whole.n > 0 && html`<rect class="trend-whole" x=${at(whole.low)} y="0" width=${wide(whole)} height="34" />
      <line class="trend-mean" x1=${at(whole.share)} x2=${at(whole.share)} y1="0" y2="34" />`}
    <line class="trend-axis" x1="0" x2="100%" y1="33" y2="33" />
    ${point.n > 0 && html`<line class="trend-limits" x1=${at(point.low)} x2=${at(point.high)} y1="17" y2="17" />
      <line class="trend-end" x1=${at(point.low)} x2=${at(point.low)} y1="9" y2="25" /><line class="trend-end" x1=${at(point.high)} x2=${at(point.high)} y1="9" y2="25" />
      <svg x=${at(point.share)} y="17"><path class=${`trend-point symbol-${symbol}`} d=${symbol === 'R' ? 'M-8-8H8V8H-8Z' : symbol === 'A' ? 'M0-8A8 8 0 1 1 0 8A8 8 0 1 1 0-8Z' : 'M0-10L10 0L0 10L-10 0Z'} /></svg>`}
  </svg>`
}
