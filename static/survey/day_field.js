// A day typed as it stands in a letter or a log; years later it is often not known, and then stays empty.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { TextField } from '../frame/text_field.js'

/** @param {string} text @returns {boolean} whether it is empty or a day of the calendar */
export function isDay(text) {
  if (!text.trim()) return true
  const found = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text.trim())
  if (!found) return false
  const [year, month, day] = found.slice(1).map(Number)
  const date = new Date(Date.UTC(year, month - 1, day))
  return date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === day
}

/** @param {{name: string, label: string, value: string, onChange: (value: string) => any}} props */
export function DayField({ name, label, value, onChange }) {
  return html`<${TextField} name=${name} label=${label} hint=${say('survey.day.hint')} value=${value} onChange=${onChange} inputmode="numeric" />
    ${!isDay(value) && html`<p class="problem" role="alert"><strong>▲ ${say('survey.day.wrong', { field: label })}</strong></p>`}`
}
