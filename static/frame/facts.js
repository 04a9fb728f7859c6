// Names and values: beside each other where there is room.

import { html } from './view.js'

/** @param {{rows: [string, string][]}} props rows whose value is empty are left out */
export function Facts({ rows }) {
  return html`<dl class="facts">${rows.filter(([, value]) => value).map(([name, value]) => html`<div key=${name}><dt>${name}</dt><dd>${value}</dd></div>`)}</dl>`
}
