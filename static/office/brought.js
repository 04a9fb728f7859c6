// What became of a copy: who vouches for it, how much of it came, and each thing that did not simply come, with its reason.

import { html } from '../frame/view.js'
import { known, say } from '../words/say.js'
import { Part } from '../frame/screen.js'
import { clock } from '../frame/age.js'
import { STATUSES, counted, isWhole } from '../copy/outcome.js'

/** @param {{outcome: import('../copy/outcome.js').Outcome}} props */
export function Brought({ outcome }) {
  const counts = counted(outcome)
  const whole = isWhole(outcome)
  const open = [...outcome.came.values()].filter((one) => one.code)
  return html`<div class="stack" data-name="brought" data-whole=${String(whole)}>
    <p class="done-bar" role="status">${whole ? '✓' : '▲'} ${say(whole ? 'copy.end.whole' : 'copy.end.incomplete')}</p>
    <p>${outcome.listed ? say('copy.made', { at: clock(outcome.made ?? '') }) : say('copy.no_list')}</p>
    ${outcome.seals.map((/** @type {any} */ one) => html`<p key=${one.kid} data-name="seal" data-state=${one.state}>${say(`copy.seal.${one.state}`, { who: one.who || one.kid.slice(0, 8) })}</p>`)}
    ${outcome.seals.length === 0 && html`<p>${say('copy.unsealed')}</p>`}
    ${outcome.damage.map((/** @type {any} */ one, /** @type {number} */ n) => html`<p key=${n} data-name="damage" data-code=${one.code}><strong>${say(`copy.damage.${one.code}`, one)}</strong></p>`)}
    <ul class="rows">${STATUSES.filter((status) => counts[status]).map((status) => html`<li key=${status} class="row" data-name="brought-count" data-status=${status} data-n=${counts[status]}>
      <strong>${say(`copy.status.${status}`, { n: counts[status] })}</strong></li>`)}</ul>
    ${open.length > 0 && html`<${Part} name=${say('bring.open')}>
      <ul class="rows">${open.map((one) => html`<li key=${one.what + one.job + one.name} class="row" data-name="brought-item" data-status=${one.status} data-code=${one.code}>
        <strong>${one.kind && known(`kind.${one.kind}`) ? say(`kind.${one.kind}`) : say(`copy.${one.what}`)}${one.who ? ` · ${one.who}` : ''}</strong>
        <span>${one.at ? `${clock(one.at)} · ` : ''}${say('missing.name', { name: one.name.slice(0, 12) })}</span>
        <div class="problem"><strong>${words(one, 'message')}</strong><p>${words(one, 'way_out')}</p></div>
      </li>`)}</ul>
    <//>`}
  </div>`
}

/** In the language of now, where this build knows the reason; else in the office's words. @param {any} one @param {'message' | 'way_out'} part */
function words(one, part) {
  const key = `refusal.${one.code}.${part}`
  return known(key) ? say(key, { field: one.field, value: one.value }) : one[part]
}
