// The bad share of each lot with its exact range, down the days: a p-chart turned on its side, so that every lot is a row
// that can be read, pressed and printed. The line of all lots runs through the rows.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { Part } from '../frame/screen.js'
import { percent } from '../lot/name.js'
import { Blind } from './blind.js'
import { LotRow } from './lot_row.js'

/** @param {{job: string, record: any, told: any, named: import('./named.js').Named}} props */
export function Shares({ job, record, told, named }) {
  const widest = Math.max(0.1, ...told.shares.flatMap((/** @type {any} */ series) => series.points.filter((/** @type {any} */ one) => one.n > 0).map((/** @type {any} */ one) => one.high)))
  const reach = Math.min(1, Math.ceil(widest * 10) / 10)
  return html`<${Part} name=${say('trends.shares')}>
    <${Blind} names=${told.blind.shares} />
    ${told.shares.length === 0 && html`<p>${say('trends.shares.none')}</p>`}
    ${told.shares.map((/** @type {any} */ series) => html`<${Series} key=${series.name} ...${{ job, record, series, reach, named }} />`)}
    ${told.shares.length > 0 && html`<p class="hint">${say('trends.shares.how')}</p>`}
  <//>`
}

/** @param {{job: string, record: any, series: any, reach: number, named: import('./named.js').Named}} props */
function Series({ job, record, series, reach, named }) {
  const { whole } = series
  return html`<section class="stack trend-series" data-name="series" data-n=${whole.n}>
    <h3>${series.crew || say('lot.no_crew')} · ${named('assembly', series.assembly ?? '')}</h3>
    <p>${whole.n > 0 ? say('trends.shares.told', { found: whole.found, n: whole.n, share: percent(whole.share), low: percent(whole.low), high: percent(whole.high) }) : say('trends.shares.untold')}</p>
    <p class="curve-across trend-scale"><span>0</span><span>${say('trends.shares.scale')}</span><span>${percent(reach)}</span></p>
    <ol class="rows trend-lots">${series.points.flatMap((/** @type {any} */ point, /** @type {number} */ at) => [
      html`<${LotRow} key=${point.lot} ...${{ job, record, point, whole, reach, n: at + 1 }} />`,
      html`<${Turn} key=${'turn' + at} from=${point.called_for} to=${series.points[at + 1]?.called_for ?? series.inspection} />`,
    ])}</ol>
  </section>`
}

/** Where the inspection changed between two lots. @param {{from: string, to: string}} props */
function Turn({ from, to }) {
  if (from === to) return null
  return html`<li class="turn" data-name="turn">↳ ${say('trends.shares.turn', { state: say(`lot.inspection.${to}`) })}</li>`
}
