// One severity of a lot: what was found in how many, which plan and why, how many bad panels the lot may hold all the same,
// and what the plan lets through. Where two severities have the same plan the curve is drawn once.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { Part } from '../frame/screen.js'
import { Curve, POINTS } from './curve.js'
import { DECIDED } from './decided.js'
import { SEVERITIES, percent } from './name.js'
import { ofSeverity, said } from './says.js'

/** @param {{lot: any, name: string}} props */
export function Severity({ lot, name }) {
  const one = lot.decision.by[name]
  /** @param {string} about @returns {string[]} */
  const of = (about) => ofSeverity(lot, name, about).map(said)
  const curve = curveOf(lot, name)
  const same = curve && SEVERITIES.slice(0, SEVERITIES.indexOf(name)).find((other) => JSON.stringify(curveOf(lot, other)) === JSON.stringify(curve))
  return html`<${Part} name=${say(`lot.severity.${name}`)}>
    <div class="severity" data-name="severity" data-severity=${name} data-state=${one.state}>
      ${[...of('not_asked'), ...of('no_plan')].map((text) => html`<p key=${text} class="big">${text}</p>`)}
      ${of('found').map((text) => html`<p key=${text} class="severity-found"><span class=${'mark ' + one.state} aria-hidden="true">${DECIDED[one.state] ?? '–'}</span> <strong>${text}</strong></p>`)}
      ${of('unknown').map((text) => html`<p key=${text}>${text}</p>`)}
      ${of('plan').map((text) => html`<p key=${text} data-name="plan">${text}</p>`)}
      ${of('bound').map((text) => html`<p key=${text} class="bound" data-name="bound">${text}</p>`)}
      ${same && html`<p>${say('curve.same', { severity: say(`lot.severity.${same}`) })}</p>`}
      ${curve && !same && html`<h3>${say('curve')}</h3><${Curve} ...${{ plan: curve, risk: one.risk, name }} />
        <ul class="curve-words" data-name="points">${POINTS.map(([chance, mark]) => html`<li key=${chance} data-chance=${chance}><span class="curve-mark" aria-hidden="true">${mark}</span>
          <span>${say(`curve.${chance}`, { share: percent(one.risk[chance]) })}</span></li>`)}</ul>
        ${of('risk_in_lot').map((text) => html`<p key=${text}>${text}</p>`)}`}
    </div>
  <//>`
}

/** The plan whose curve is drawn; null where the rulebook says no chance of it. @param {any} lot @param {string} name @returns {{n: number, accept: number} | null} */
function curveOf(lot, name) {
  const one = lot.decision.by[name]
  if (ofSeverity(lot, name, 'risk').length === 0) return null
  return { n: lot.closed ? one.n : one.drawn - one.dropped, accept: one.reject - 1 }
}
