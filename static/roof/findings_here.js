// The way from an area or a panel to its findings, and to writing down another.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'

/** Who may write one down by hand, as the record's authority has it. */
export const MAY_RAISE = ['foreman', 'inspector', 'reviewer', 'administrator', 'engineer']

/** @param {{job: string, record: any, person: any, area: any, panel?: number | null}} props */
export function FindingsHere({ job, record, person, area, panel = null }) {
  const here = Object.values(record.findings).filter((/** @type {any} */ one) => one.area === area.id && (panel === null || one.panel === panel))
  const raise = panel === null ? ['area', area.id] : ['panel', area.id, panel]
  return html`
    ${here.length > 0 && html`<a class="press" href=${here.length === 1 ? path('job', job, 'finding', /** @type {any} */ (here[0]).id) : path('job', job, 'findings', 'state', 'all', 'area', area.id)} data-name="findings-here">
      <span class="label">${say('findings.here', { n: here.length })}</span><span class="go" aria-hidden="true">→</span></a>`}
    ${MAY_RAISE.includes(person.role) && html`<a class="press" href=${path('job', job, 'new-finding', ...raise)} data-name="new-finding"><span class="label">${say('findings.new')}</span></a>`}`
}
