// What is known of a panel: a mark and a word for each, strongest first. Never a colour alone.

import { say } from '../words/say.js'

export const STATES = ['looked_at', 'photographed', 'offered', 'released', 'waiting', 'covered_unseen', 'open', 'to_come', 'no_seam']

export const MARKS = /** @type {Record<string, string>} */ ({
  looked_at: '✓', photographed: '◉', offered: '◇', released: '=', waiting: '…', covered_unseen: '✕', open: '◧', to_come: '·', no_seam: '–',
})

/** The figures of an area, what nobody may overlook first. @param {Record<string, number>} counts @returns {[string, number][]} */
export function figures(counts) {
  const order = ['covered_unseen', ...STATES.filter((state) => state !== 'covered_unseen')]
  return order.filter((state) => counts[state] > 0).map((state) => [state, counts[state]])
}

/** `panel 12`, `panels 12 to 16` @param {{from: number, to: number}} run */
export function panels({ from, to }) {
  return from === to ? say('lot.panel', { panel: from }) : say('lot.panels', { from, to })
}
