// A recorded fit check beside what the same findings come to now: approvals run out and drawings are corrected.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { fitted } from '../roof/fitted.js'
import { lineName } from './name.js'
import { useLines } from './lines.js'

/** @param {{record: any, area: any, day: string}} props of an area whose fit was recorded */
export function Since({ record, area, day }) {
  const before = record.fits[area.id]
  const { lines } = useLines({ record, area, found: before.found, day })
  const results = Object.fromEntries(before.lines.map((/** @type {any} */ one) => [one.line, one.verdict.result]))
  const other = (lines ?? []).filter((one) => results[one.line] !== one.verdict).map((one) => lineName(one.line))
  const { mark, text } = fitted(record, area)
  return html`<p class="done-bar">${mark} ${text}</p>
    ${other.length > 0 && html`<p class="problem" data-name="fit-since"><strong>▲ ${say('fit.since', { n: other.length })}</strong> ${other.join(' · ')}</p>`}`
}
