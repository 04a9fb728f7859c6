// One step of a line of steps: its number on the line, its minutes, open while it is its turn.

import { html } from '../frame/view.js'

/** @param {{n: number, minutes: string, name: string, done: boolean, open: boolean, children?: any}} props */
export function Step({ n, minutes, name, done, open, children }) {
  return html`<li class=${done ? 'step done' : 'step'} data-name="step" data-step=${n} data-done=${done}>
    <details open=${open}><summary class="press"><span class="mark" aria-hidden="true">${done ? '✓' : n}</span><span class="label">${name}<span class="under">${minutes}</span></span></summary>
      ${children}</details></li>`
}
