// One step back, one step on: every change can be taken back.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'

/** @param {{drawing: any}} props */
export function Steps({ drawing }) {
  const { draft, undo, redo } = drawing
  return html`<div class="ways two">
    <button type="button" class="press" data-name="undo" disabled=${!draft.past.length} onClick=${undo}><span aria-hidden="true">←</span> ${say('draw.undo')}</button>
    <button type="button" class="press" data-name="redo" disabled=${!draft.future.length} onClick=${redo}>${say('draw.redo')} <span aria-hidden="true">→</span></button>
  </div>`
}
