// The lots as the ribs of a roof, in order: one accepted stands, one not accepted fell, one not determinable is dashed.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'

const MARKS = /** @type {Record<string, string>} */ ({ A: '✓', R: '✕', M: '~', N: '?', open: '…' })

/** @param {{job: string, series: any}} props */
export function SeriesStrip({ job, series }) {
  const seen = Object.keys(MARKS).filter((mark) => series.lots.some((/** @type {any} */ one) => (one.symbol ?? 'open') === mark))
  return html`<ol class="lots">
    ${series.lots.flatMap((/** @type {any} */ one, /** @type {number} */ at) => {
      const symbol = one.symbol ?? 'open'
      return [html`<li key=${one.lot}><a class=${'press lot-rib symbol-' + symbol} href=${path('job', job, 'lot', one.lot)} data-name="series-lot" data-symbol=${symbol}>
        <span class="lot-n">${at + 1}</span><span class="lot-rib-stand" aria-hidden="true" />
        <span class="lot-mark" role="img" aria-label=${result(symbol)}>${MARKS[symbol]}</span><span class="lot-day">${one.day.slice(5)}</span></a></li>`,
      one.lot === series.since && html`<li key="turn" class="turn">${say('series.turn', { state: say(`lot.inspection.${series.inspection}`) })}</li>`]
    })}
  </ol>
  <ul class="legend">${seen.map((symbol) => html`<li key=${symbol}><span class="mark" aria-hidden="true">${MARKS[symbol]}</span> ${result(symbol)}</li>`)}</ul>`
}

/** @param {string} symbol */
function result(symbol) {
  return say(symbol === 'open' ? 'lot.state.open' : `lot.series.symbol.${symbol}`)
}
