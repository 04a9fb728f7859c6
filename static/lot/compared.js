// The audit's findings beside the foreman's on the same areas: each with the range its share lies in, drawn on one scale.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { Part } from '../frame/screen.js'
import { percent } from './name.js'
import { said } from './says.js'

const WHOSE = ['audit', 'foreman']

/** @param {{record: any, lot: any}} props */
export function Compared({ record, lot }) {
  const found = record.audits?.[lot.id]
  if (!found) return null
  const known = WHOSE.filter((who) => found[who].n > 0)
  const widest = Math.max(...known.map((who) => Number(found[who].high)), 0.01)
  const at = (/** @type {number} */ share) => `${(100 * share) / widest}%`
  return html`<${Part} name=${say('compared')}>
    <div class="compared" data-name="compared" data-says=${found.statement}>${known.map((who) => {
      const one = found[who]
      return html`<div key=${who} class="stack" data-who=${who}><p class="big">${found.says.filter((/** @type {any} */ sentence) => sentence.code.endsWith(`.${who}`)).map(said)}</p>
        <span class="range" aria-hidden="true"><span class="range-reach" style=${{ left: at(one.low), right: `calc(100% - ${at(one.high)})` }} /><span class="range-found" style=${{ left: at(one.found / one.n) }} /></span></div>`
    })}
    ${known.length > 0 && html`<p class="curve-across" aria-hidden="true"><span>0</span><span>${percent(widest)}</span></p>`}</div>
    ${found.says.filter((/** @type {any} */ sentence) => !WHOSE.some((who) => sentence.code.endsWith(`.${who}`))).map(said).map((/** @type {string} */ text) => html`<p key=${text}>${text}</p>`)}
  <//>`
}
