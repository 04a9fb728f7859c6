// What people were asked and answered, as it was signed.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { spelled } from '../frame/spelled.js'
import { Facts } from '../frame/facts.js'
import { shown } from '../frame/amount.js'

/** The very place that people were asked about: what is told reaches over every one within the radius.
 * @param {any} record @param {any} one */
export const askedAt = (record, one) => say('survey.asked.at', { area: record.areas[one.area]?.name ?? one.area, panel: one.panel, at: shown(one.from_low_end) })

/** @param {{record: any, told: any, people: Record<string, {name: string}>}} props */
export function Asked({ record, told, people }) {
  if (told.asked.length === 0) return html`<p>${say('survey.asked.nobody')}</p>`
  return told.asked.map((/** @type {any} */ one) => html`<div key=${one.digest} class="statement stack" data-name="survey-told">
    <h3>${spelled(one.at)} · ${people[one.by]?.name ?? one.by}</h3>
    <p>${askedAt(record, one)}</p>
    <p><strong>${say(`survey.shown.${one.warranty.shown}`)}</strong></p>
    <${Facts} rows=${[
      [say('survey.warranty.number'), one.warranty.number], [say('survey.warranty.by'), one.warranty.by], [say('survey.warranty.terms'), one.warranty.terms],
      [say('survey.warranty.from'), one.warranty.from ? spelled(one.warranty.from) : ''], [say('survey.warranty.until'), one.warranty.until ? spelled(one.warranty.until) : ''],
      [say('survey.event'), [one.event.day && spelled(one.event.day), one.event.what, one.event.figures, one.event.source].filter(Boolean).join(' · ')],
      [say('survey.noticed'), [one.noticed.day && spelled(one.noticed.day), one.noticed.by, one.noticed.said].filter(Boolean).join(' · ')],
      ...one.substitutions.map((/** @type {any} */ row) => [say('survey.substitutions'), [row.what, row.agreed_by].filter(Boolean).join(' · ')]),
      ...one.changes.map((/** @type {any} */ row) => [say(`survey.change.${row.what}`), [row.day && spelled(row.day), row.by, row.said].filter(Boolean).join(' · ')]),
      ...one.samples.map((/** @type {any} */ row) => [`${say('survey.sample.bag')} ${row.bag}`, [row.what, row.day && spelled(row.day), row.taken_by, ...row.custody.map((/** @type {any} */ hand) => `→ ${hand.to} (${[hand.day && spelled(hand.day), hand.kept].filter(Boolean).join(', ')})`)].filter(Boolean).join(' · ')]),
      [say('survey.note'), one.note],
    ]} />
    <p>${say(`survey.changed.${one.changed}`)}</p></div>`)
}
