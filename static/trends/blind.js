// What a figure cannot be narrowed by: said, or it would be taken for narrowed.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'

/** @param {{names: string[]}} props */
export function Blind({ names }) {
  return names.length > 0 && html`<p class="done-bar" data-name="blind">${say('trends.blind', { names: names.map((name) => say(`trends.by.${name}`)).join(', ') })}</p>`
}
