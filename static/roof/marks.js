// A place on a drawing: its state as a shape and a sign.

import { html } from '../frame/view.js'
import { MARKS } from './state.js'

/** @param {{x: number, y: number, large: number, state: string}} props */
export function Mark({ x, y, large, state }) {
  const shape = state === 'fail' ? html`<polygon points="0,-15 15,0 0,15 -15,0" />`
    : state === 'unsafe' || state === 'covered' ? html`<rect x="-12" y="-12" width="24" height="24" />` : html`<circle r="13" />`
  return html`<g class=${'mark ' + state} transform=${`translate(${x} ${y}) scale(${large})`}>${shape}<text text-anchor="middle" dy="6">${MARKS[state]}</text></g>`
}

/** The place just chosen. @param {{x: number, y: number, large: number}} props */
export function Cross({ x, y, large }) {
  return html`<g class="cross" transform=${`translate(${x} ${y}) scale(${large})`}><circle r="16" /><path d="M-26 0H-8M8 0H26M0 -26V-8M0 8V26" /></g>`
}
