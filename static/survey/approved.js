// Under which approval the panels here were set, by the day they were set on.

import { html } from '../frame/view.js'
import { spelled } from '../frame/spelled.js'
import { say } from '../words/say.js'

/** @param {{record: any, told: any}} props */
export function Approved({ record, told }) {
  if (told.set.length === 0) return html`<p data-name="survey-set-unknown">${say('survey.set.unknown')}</p>`
  return html`${told.set.map((/** @type {any} */ one, /** @type {number} */ n) => html`<div key=${n} class="statement stack" data-name="survey-set">
    <h3>${spelled(one.day)}</h3>
    <p>${say(`survey.set.by.${one.by}`, { area: record.areas[one.area]?.name ?? '—', crew: one.crew || '—', panels: one.panels.map((/** @type {number[]} */ [low, high]) => (low === high ? low : `${low}–${high}`)).join(', ') })}</p>
    <${Assembly} one=${one.assembly} /></div>`)}`
}

/** @param {{one: any}} props */
function Assembly({ one }) {
  if (one.from === null) return html`<p>${say('survey.approval.none')}</p>`
  const judged = one.in_force
  const state = judged.refused ? 'unread' : judged.verdict
  return html`<p>${say('survey.approval', { name: one.name ?? '—', reference: one.approval.reference || '—' })} ${say(`survey.from.${one.from}`)}</p>
    <p data-name="in-force" data-state=${state}><strong>${state === 'pass' ? '✓' : '▲'} ${say(`survey.in_force.${state}`)}</strong> ${judged.reason ? say(`reason.${judged.reason.code}`) : ''}</p>
    ${one.changed.length > 0 && html`<p>${say('survey.changed_since', { what: one.changed.map((/** @type {string} */ name) => say(`survey.member.${name}`)).join(', ') })}</p>`}`
}
