// Things that a phone told of and that have not arrived, each by what it is and when it was made.

import { html } from './view.js'
import { known, say } from '../words/say.js'
import { clock } from './age.js'

const MOST = 100 // on a screen; the office's answer has all of them

/** @param {{items: {what: string, name: string, kind?: string, at?: string, size: number}[]}} props */
export function OutItems({ items }) {
  return html`<ul class="rows" data-name="out-items">
    ${items.slice(0, MOST).map((one) => html`<li key=${one.what + one.name} class="row" data-item=${one.name}>
      <strong>${what(one)}${one.what === 'photo' ? ` · ${say('unsent.bytes', { n: Math.ceil(one.size / 1024) })}` : ''}</strong>
      <span>${one.at ? `${clock(one.at)} · ` : ''}${say('missing.name', { name: one.name.slice(0, 12) })}</span></li>`)}
    ${items.length > MOST && html`<li class="row">${say('missing.more', { n: items.length - MOST })}</li>`}
  </ul>`
}

/** @param {{what: string, kind?: string}} one */
function what({ what, kind }) {
  if (what === 'photo') return kind && kind !== 'photo' && known(`kind.${kind}`) ? `${say('copy.photo')} · ${say(`kind.${kind}`)}` : say('copy.photo')
  return kind && known(`kind.${kind}`) ? say(`kind.${kind}`) : say('copy.entry')
}
