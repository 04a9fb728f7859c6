// What is kept here was written by a newer build than the one that runs: it is shown and sent, and nothing is added.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'

export function Newer() {
  return html`<p class="part-seen" role="status" data-name="newer"><span aria-hidden="true">▲</span> ${say('storage.newer')} ${say('storage.newer.way_out')}</p>`
}
