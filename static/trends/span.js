// One finding on the scale of how long findings stay open.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { STATE_MARKS } from '../finding/states.js'
import { title, where } from '../finding/told.js'
import { lasting } from './lasting.js'

/** @param {{job: string, record: any, definitions: any[], one: any, longest: number}} props */
export function Span({ job, record, definitions, one, longest }) {
  const finding = record.findings[one.id]
  const wide = `${Math.max(0.5, (100 * one.hours) / longest)}%`
  const still = one.closed === null
  return html`<li><a class=${`press tall trend ${one.state}`} href=${path('job', job, 'finding', one.id)} data-name="span" data-state=${one.state}>
    <span class=${`mark ${one.state}`} aria-hidden="true">${STATE_MARKS[one.state] ?? '?'}</span>
    <span class="label">${lasting(one.hours)}, ${say(`trends.state.${one.state}`)}${one.late ? ` · ▲ ${say('trends.closing.late_one')}` : ''}<span class="under">${finding ? `${title(definitions, finding)} · ${where(record, finding)}` : ''}</span></span><span class="go" aria-hidden="true">→</span>
    <svg class="trend-span" width="100%" height="20" aria-hidden="true" focusable="false"><line class="trend-axis" x1="0" x2="100%" y1="19" y2="19" /><rect class=${still ? 'trend-open' : 'trend-full'} x="0" y="3" width=${wide} height="12" /></svg></a></li>`
}
