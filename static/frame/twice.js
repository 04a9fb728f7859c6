// What cannot be taken back takes two taps, the second in another place than the first.

import { html, useState } from './view.js'
import { say } from '../words/say.js'

/** @param {{label: string, ask: string, run: () => any, name?: string}} props */
export function Twice({ label, ask, run, name }) {
  const [asked, setAsked] = useState(false)
  if (!asked) return html`<button type="button" class="press" data-name=${name} onClick=${() => setAsked(true)}>${label}</button>`
  return html`<div class="problem" role="alert">
    <strong>${ask}</strong>
    <button type="button" class="press main plain" onClick=${() => setAsked(false)}>${say('keep_it')}</button>
    <button type="button" class="press" data-name=${name ? name + '-sure' : undefined} onClick=${() => { setAsked(false); run() }}>${label}</button>
  </div>`
}
