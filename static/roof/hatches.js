// Hatches for states and zones: told apart by their lines and signs, whatever the light does to colours.

import { html } from '../frame/view.js'

/** Strongest first, as the record says them; the sign stands on the plan and in the legend. */
export const STATES = /** @type {Record<string, string>} */ ({
  looked_at: '✓', photographed: '◉', offered: '◇', released: '=', waiting: '…', covered_unseen: '✕', open: '◧', to_come: '', no_seam: '' })

/** path in a cell of 12, its width, and the ground under it */
const LINES = /** @type {Record<string, [string, number, string]>} */ ({
  looked_at: ['M0 0L12 12M12 0L0 12', 2, '#cfd8da'], photographed: ['M3 3h2M9 9h2', 3, '#e7eaea'], offered: ['M0 12L12 0', 1.4, '#fffdf8'],
  released: ['M0 3H12M0 9H12', 2, '#dbe5e6'], waiting: ['M0 0L12 12', 1.4, '#e7eaea'], covered_unseen: ['M-3 3L3 -3M0 12L12 0M9 15L15 9', 4, '#f4cbb1'],
  open: ['M0 6H5', 2.5, '#fdebdf'], to_come: ['', 0, '#f7f6f1'], no_seam: ['', 0, '#e9e6dc'],
  'zone-0': ['', 0, '#f7f6f1'], 'zone-1': ['M0 12L12 0', 2, '#e7eaea'], 'zone-2': ['M0 0L12 12M12 0L0 12', 2.4, '#cfd8da'],
  'zone-3': ['M0 6H12', 3, '#e7eaea'], 'zone-4': ['M6 0V12', 3, '#dbe5e6'], 'zone-5': ['M3 3h2M9 9h2', 4, '#e7eaea'],
})

/** @param {{name: string, scale: number, of: string}} props `scale`: lines stay as wide on the screen; `of`: the drawing's own name, since a page has several */
function Hatch({ name, scale, of }) {
  const [path, width, ground] = LINES[name]
  return html`<pattern id=${`${of}-${name}`} width="12" height="12" patternUnits="userSpaceOnUse" patternTransform=${`scale(${1 / scale})`}>
    <rect width="12" height="12" fill=${ground} /><path d=${path} stroke=${name === 'covered_unseen' ? '#7a2e0e' : '#3f4b52'} stroke-width=${width} fill="none" /></pattern>`
}

/** @param {{scale: number, names: string[], of: string}} props */
export function Hatches({ scale, names, of }) {
  return html`<defs>${names.map((name) => html`<${Hatch} key=${name} ...${{ name, scale, of }} />`)}</defs>`
}

/** A zone's hatch: the usual three by name, an engineer's own by the order of the assembly. @param {string | null} zone @param {string[]} names of the assembly's zones */
export function zoneHatch(zone, names) {
  const usual = ['field', 'edge', 'corner'].indexOf(zone ?? '')
  if (usual >= 0) return `zone-${usual}`
  const at = names.indexOf(zone ?? '')
  return `zone-${at < 0 ? 0 : Math.min(at, 5)}`
}

/** @param {{rows: {name: string, sign?: string, words: string}[], label: string}} props */
export function HatchLegend({ rows, label }) {
  return html`<ul class="legend" aria-label=${label}>${rows.map(({ name, sign, words }) => html`<li key=${name}>
    <span class="swatch" aria-hidden="true"><svg width="34" height="26" viewBox="0 0 34 26"><${Hatches} of=${`legend-${name}`} scale=${1} names=${[name]} /><rect width="34" height="26" fill=${`url(#legend-${name}-${name})`} /></svg>${sign && html`<b>${sign}</b>`}</span> ${words}</li>`)}</ul>`
}
