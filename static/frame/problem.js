// What went wrong, as a person needs it: which field, which value, and the way out.

import { html } from './view.js'
import { known, say } from '../words/say.js'

/** @param {any} fault @returns {{text: string, way: string}} */
export function words(fault) {
  const facts = { ...(fault.facts ?? {}) }
  if (facts.field && known(`field.${facts.field}`)) facts.field = say(`field.${facts.field}`)
  if (fault.fromServer) return { text: fault.message, way: fault.wayOut ?? '' }
  const code = fault.code ?? ''
  const text = known(code) ? say(code, facts) : say('trouble.unknown', { what: fault.message ?? String(fault) })
  const way = fault.wayOut ?? (known(`${code}.way_out`) ? say(`${code}.way_out`, facts) : known(code) ? '' : say('trouble.unknown.way_out'))
  return { text, way }
}

/** @param {{fault: any}} props */
export function Problem({ fault }) {
  if (!fault) return null
  const { text, way } = words(fault)
  return html`<div class="problem" role="alert"><strong><span aria-hidden="true">▲</span> ${text}</strong>
    ${way && html`<p>${way}</p>`}</div>`
}
