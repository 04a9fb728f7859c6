// One part of the day folded to a line: its name, and what is told of it so far. Two of a short choice stand side by side.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'

/** @param {{name: string, title: string, told: string, children?: any}} props `told`: empty where nothing is told yet */
export function Fold({ name, title, told, children }) {
  return html`<details class="brief" data-name=${`part-${name}`} data-told=${told ? 'yes' : 'no'}><summary class="press tall" data-name=${`open-${name}`}>
      <span class="label">${told ? '✓ ' : ''}${title}<span class="under">${told || say('day_record.not_told')}</span></span></summary>
    <div class="stack">${children}</div></details>`
}
