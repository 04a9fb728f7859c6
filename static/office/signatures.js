// Whose signatures a report bears: each with its certificate's fingerprint, to be compared by another way.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { Part } from '../frame/screen.js'
import { when } from './when.js'

/** @param {{signatures: any[]}} props the seal first */
export function Signatures({ signatures }) {
  return html`<${Part} name=${say('signing')}>
    <ol class="rows" data-name="signatures">${signatures.map((one, at) => html`<${Signature} key=${at} one=${one} n=${at} />`)}</ol>
    <p class="hint">${say('signing.compare')}</p>
  <//>`
}

/** @param {{one: any, n: number}} props */
function Signature({ one, n }) {
  const stamped = one.stamp ? say('signing.stamped', { authority: one.stamp.name, at: when(one.stamp.time) }) : say('signing.unstamped')
  return html`<li class="row" data-name="signature" data-holds=${String(one.holds)}>
    <span class="over">${n === 0 ? say('signing.seal') : say('signing.countersignature', { n })}</span>
    <strong>${one.name}</strong>
    <span class=${one.holds ? '' : 'problem'}><span aria-hidden="true">${one.holds ? '✓' : '▲'}</span> ${say(one.holds ? 'signing.holds' : 'signing.broken')}</span>
    <span class="line">${one.time && say('signing.at', { at: when(one.time) })} ${stamped}</span>
    <span class="line link-text" data-name="fingerprint">${grouped(one.fingerprint)}</span></li>`
}

/** Four digits at a time, to be read aloud. @param {string} fingerprint */
function grouped(fingerprint) {
  return (fingerprint ?? '').replace(/(.{4})(?=.)/g, '$1 ')
}
