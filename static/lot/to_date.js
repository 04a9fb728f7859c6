// All lots of the job so far, severity by severity: a day's five panels say little, fifty say more.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { SEVERITIES } from './name.js'
import { said } from './says.js'

/** @param {{record: any}} props */
export function ToDate({ record }) {
  return html`<ul class="rows beside" data-name="to-date">${SEVERITIES.filter((name) => record.to_date[name]).map((name) => html`<li key=${name} class="to-date" data-severity=${name}>
    <h3>${say(`lot.severity.${name}`)}</h3><p>${said(record.to_date[name].says)}</p></li>`)}</ul>`
}
