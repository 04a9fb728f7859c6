// What the rulebook makes of the drawing as it stands: its panels, and everything that is wrong with it, in words.

import { html, useEffect, useRef, useState } from '../frame/view.js'
import { known, say } from '../words/say.js'
import { number } from '../words/number.js'
import { ask } from '../rules/ask.js'

const SOON = 120 // ms after the last change
/** Fields that a drawing cannot mend, and whose fault leaves the closest approved spacing to count. */
const NOT_DRAWN = /^(assembly|zones\[|zone_map$|zone_map\.names)/

/**
 * @param {any} body an area's, or null while a number is mistyped @param {any} assembly @param {string} [call]
 * @returns {any} what the rulebook lays out of the last whole drawing, null until it answered
 */
export function useLayout(body, assembly, call = 'layout') {
  const [layout, setLayout] = useState(/** @type {any} */ (null))
  const turn = useRef(0)
  const text = JSON.stringify([body, assembly?.digest])
  useEffect(() => {
    const mine = ++turn.current
    if (!body) return setLayout(null)
    const timer = setTimeout(async () => {
      try {
        const found = await ask({ call, area: body, assembly: assembly ?? null })
        if (mine === turn.current) setLayout(found)
      } catch (fault) {
        const { code, field, value } = /** @type {any} */ (fault)
        if (mine === turn.current) setLayout(call !== 'layout' ? null : { panels: null, lengths: [], stations: {}, faults: code ? [{ code, field, value }] : [] })
      }
    }, SOON)
    return () => clearTimeout(timer)
  }, [text])
  return layout
}

/** The faults that keep a drawing from being a roof. @param {any} layout */
export function faultsOf(layout) {
  return (layout?.faults ?? []).filter((/** @type {any} */ one) => !NOT_DRAWN.test(one.field))
}

/**
 * @param {{layout: any, unit: string, onSelect: ((one: any) => any) | null}} props `onSelect`: where an edge can be shown
 */
export function Faults({ layout, unit, onSelect }) {
  const found = faultsOf(layout)
  if (!found.length) return null
  const rows = new Map() // one line for all edges that have no name
  for (const fault of found) {
    const where = Number(/\[(\d+)\]/.exec(fault.field)?.[1] ?? -1)
    const same = fault.code === 'edge_unknown' && fault.value === null ? 'edges' : `${fault.code}/${fault.field}`
    const row = rows.get(same) ?? { ...fault, where, n: 0 }
    row.n += 1
    rows.set(same, row)
  }
  return html`<div class="problem" role="alert" data-name="faults"><strong><span aria-hidden="true">▲</span> ${say('draw.faults', { n: rows.size })}</strong>
    <ul class="rows">${[...rows].map(([name, row]) => html`<li key=${name} data-code=${row.code}>${wording(row, unit)}
      ${onSelect && row.where >= 0 && /^(edges|outline)/.test(row.field) && html`<button type="button" class="press" data-name="show-fault" onClick=${() => onSelect({ what: 'edge', at: row.where })}>${say('draw.show_edge', { n: row.where + 1 })}</button>`}
    </li>`)}</ul></div>`
}

/** @param {any} row @param {string} unit */
function wording(row, unit) {
  const value = row.code === 'does_not_close' ? number(row.value, unit) : String(row.value ?? '')
  const code = row.code === 'edge_unknown' && row.value === null ? 'edge_unnamed' : row.code
  if (known(`fault.${code}`)) return say(`fault.${code}`, { n: row.n, edge: row.where + 1, value })
  return [say(`refused.${code}`, { field: say('draw.shape'), value }), say(`refused.${code}.way_out`)].join(' ')
}

/** What the panels come to, from the rulebook. @param {{layout: any, assembly: any}} props */
export function Figures({ layout, assembly }) {
  if (!layout?.panels) return null
  const runs = layout.lengths
  return html`<p class="figure-line" data-name="figures" data-panels=${layout.panels}>${say('draw.panels', { n: layout.panels })} · ${runs.length === 1 ? number(runs[0].length, layout.unit) : say('draw.panels.to', { least: number(Math.min(...runs.map((/** @type {any} */ one) => one.length)), layout.unit), most: number(layout.longest, layout.unit) })}</p>`
}
