// What the record knows of the day already, so that nobody writes it a second time.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { Part } from '../frame/screen.js'
import { shown } from '../frame/amount.js'

/** @param {{record: any, known: any}} props `known`: the record's day, or null */
export function Known({ record, known }) {
  const set = (known?.work_done ?? []).map((/** @type {any} */ row) => say('day_record.known.set', { area: record.areas[row.area]?.name ?? '—', low: row.from, high: row.to, n: row.to - row.from + 1 }))
  const open = (known?.holds ?? []).filter((/** @type {any} */ one) => one.state === 'open').length
  const lines = [...set, known?.metal.length && known.metal.slice(0, 8).map((/** @type {any} */ one) => `${one.at.slice(11, 16)} ${shown(one.temperature)}`).join(' · '),
    known?.walks.length && say('day_record.known.walks', { n: known.walks.length }), known?.findings.length && say('day_record.known.findings', { n: known.findings.length }),
    open && say('day_record.known.holds', { n: open })].filter(Boolean)
  return html`<${Part} name=${say('day_record.known')}>
    ${lines.length === 0 ? html`<p>${say('day_record.known.nothing')}</p>` : html`<ul class="rows">${lines.map((line) => html`<li key=${line} class="row">${line}</li>`)}</ul><p class="hint">${say('day_record.known.hint')}</p>`}
    ${(known?.problems ?? []).map((/** @type {string} */ code) => html`<p key=${code} class="problem" data-name="day-problem"><strong>▲ ${say(`day_record.problem.${code}`)}</strong></p>`)}
  <//>`
}
