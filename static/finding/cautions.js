// What can hurt somebody who goes back to put a thing right, on the phone and on paper alike.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'

const RULES = ['day.care.falls', 'gate.stand', 'day.care.weather', 'gate.hot', 'gate.edges', 'gate.lines', 'gate.step_back', 'gate.unsafe']

export function Cautions() {
  return html`<ul class="rules care cautions-told" data-name="cautions-told">${RULES.map((rule) => html`<li key=${rule}>${say(rule)}</li>`)}</ul>`
}
