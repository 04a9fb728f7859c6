// One area's panels in a row as they stand seen from the eave. What was covered unseen stands out of the row.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { MARKS } from './states.js'

const SIGNS = 2 // more of them than this have no room for a sign each, at any size of text

/** @param {{area: any, coverage: any}} props the list beside it says the same in words */
export function CoverageBar({ area, coverage }) {
  const unseen = coverage.runs.filter((/** @type {any} */ run) => run.state === 'covered_unseen').length
  return html`<div class="coverage-figure" aria-hidden="true">
    <div class=${area.start === 'right' ? 'coverage-bar from-right' : 'coverage-bar'} style=${{ '--unseen': Math.max(unseen, 1) }}>
      ${coverage.runs.map((/** @type {any} */ run) => html`<span key=${run.from} class=${'stretch ' + run.state} style=${{ flexGrow: run.to - run.from + 1 }}>
        ${run.state === 'covered_unseen' && unseen <= SIGNS && html`<b>${MARKS.covered_unseen}</b>`}</span>`)}
    </div>
    <p class="coverage-end">${area.start === 'right' ? `${say('coverage.first')} ▲` : `▲ ${say('coverage.first')}`}</p>
  </div>`
}
