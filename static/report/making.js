// A report that somebody asked for: how far it is, or why it could not be made.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'

/** @param {{one: any, name: string, under: string}} props `one`: as the office tells it */
export function Making({ one, name, under }) {
  if (one.state === 'failed') {
    return html`<div class="problem" data-name="not-made" data-trouble=${one.trouble}>
      <strong><span aria-hidden="true">▲</span> ${say('reports.failed', { name })}</strong>
      <p>${under && under + '. '}${say(`reports.trouble.${one.trouble}`)}</p></div>`
  }
  const percent = Math.round(one.share * 100)
  return html`<div class="making" role="status" data-name="making" data-stage=${one.stage}>
    <p><strong>${name}</strong>${under && html`<br />${under}`}</p>
    <progress max="100" value=${percent} aria-label=${say('reports.share', { n: percent })}></progress>
    <p>${say(`reports.stage.${one.stage}`)} · ${say('reports.share', { n: percent })}</p></div>`
}
