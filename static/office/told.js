// What the office told, or in plain words that there is no signal for it.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { age } from '../frame/age.js'
import { Problem } from '../frame/problem.js'

/** @param {{asked: import('./asked.js').Asked, children: (data: any) => any}} props */
export function Told({ asked, children }) {
  const { state, data, at, fault, read } = asked
  return html`
    ${state === 'no_signal' && html`<div class="problem" role="status" data-name="needs-signal">
      <strong><span aria-hidden="true">▲</span> ${say('office.no_signal')}</strong>
      <p>${data === null ? say('office.no_signal.way_out') : say('office.as_before', { age: age(at) })}</p>
      <button type="button" class="press" data-name="ask-again" onClick=${read}>${say('office.ask_again')}</button>
    </div>`}
    ${state === 'refused' && html`<${Problem} fault=${fault} />`}
    ${state === 'asking' && html`<p role="status">${say('office.asking')}</p>`}
    ${data !== null && children(data)}`
}
