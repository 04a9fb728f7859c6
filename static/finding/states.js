// How a finding's state and its weight are shown: a mark and a word each, never a colour alone.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'

export const STATE_MARKS = /** @type {Record<string, string>} */ ({ open: '✕', corrected: '◐', closed: '✓', conceded: '§', withdrawn: '–' })

const BARS = /** @type {Record<string, number>} */ ({ critical: 3, major: 2, minor: 1 })

/** Three bars, filled by weight, and the word. @param {{severity: string | null}} props null where nobody told */
export function Weight({ severity }) {
  const full = BARS[severity ?? ''] ?? 0
  return html`<span class="weight" data-severity=${severity}><span class="bars" aria-hidden="true">${[1, 2, 3].map((n) => html`<i key=${n} class=${n <= full ? 'full' : ''}></i>`)}</span> ${say(`finding.severity.${severity ?? 'untold'}`)}</span>`
}

/** @param {{state: string}} props */
export function StateMark({ state }) {
  return html`<span class=${`mark ${state}`} aria-hidden="true">${STATE_MARKS[state] ?? '?'}</span>`
}
