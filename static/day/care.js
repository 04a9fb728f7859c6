// What can hurt somebody at an open leg, short, on every screen of the day.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'

const RULES = ['gate.read', 'day.care.falls', 'day.care.weather', 'gate.step_back', 'gate.unsafe']

export function Care() {
  return html`<ul class="rules care">${RULES.map((rule) => html`<li key=${rule}>${say(rule)}</li>`)}</ul>`
}
