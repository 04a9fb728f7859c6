// One line as a bar: how far this roof comes, and the mark that it must reach or stay behind. For the eye alone.

import { html } from '../frame/view.js'

/** @param {{pair: any}} props nothing is drawn where a number is missing or they are no lengths to compare */
export function Bar({ pair }) {
  const [limit, upper, found] = [pair.limit, pair.upper, pair.found].map((one) => (one?.unit === undefined ? null : Math.max(0, Number(one.value))))
  if (limit === null || !['at_least', 'at_most', 'between'].includes(pair.sense)) return null
  const whole = Math.max(limit, upper ?? 0, found ?? 0) * 1.15 || 1
  const at = (/** @type {number} */ one) => `${(100 * one) / whole}%`
  return html`<span class=${'bar ' + pair.sense} aria-hidden="true">
    ${upper !== null && html`<span class="room" style=${{ left: at(limit), width: at(Math.max(upper - limit, 0)) }} />`}
    ${found !== null && html`<span class="reach" style=${{ width: at(found) }} />`}
    ${[limit, upper].map((one) => one !== null && html`<span class="stop" style=${{ left: at(one) }} />`)}
  </span>`
}
