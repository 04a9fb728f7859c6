// One roof area drawn to scale: seams as ribs, edges by name, the fixed line, and each place looked at.

import { html, useLayoutEffect, useRef, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { drawn } from '../frame/amount.js'
import { coverage, edges, ends, extent, panelAt, strip } from './shape.js'
import { MARKS, stateOf } from './state.js'

const BASE = 18 // px of the root's text at its usual size: marks grow with the text a person chose

/**
 * @param {{record: any, definitions: any[], area: any, tallest: number, panel?: number | null, at?: number | null,
 *   onPick?: (panel: number, fromLowEnd: number) => void, only?: string | null}} props
 *   `at`: chosen distance from the panel's low end in the outline's unit; `only`: a walk to show alone
 */
export function Plan({ record, definitions, area, tallest, panel, at, onPick, only }) {
  const box = useRef(/** @type {any} */ (null))
  const [{ room, large }, measured] = useState({ room: 320, large: 1 })
  useLayoutEffect(() => {
    const measure = () => measured((/** @type {any} */ old) => {
      const now = { room: box.current?.clientWidth || 320, large: parseFloat(getComputedStyle(document.documentElement).fontSize) / BASE }
      return now.room === old.room && now.large === old.large ? old : now
    })
    const watch = new ResizeObserver(measure)
    watch.observe(box.current)
    measure()
    return () => watch.disconnect()
  }, [])
  const shape = extent(area)
  const wide = coverage(area, record.assemblies[area.assembly])
  const count = area.panel_count ?? (wide ? Math.ceil(shape.width / wide - 1e-6) : 0)
  const RIM = BASE * large // around the drawing, so that a mark at the very edge is whole
  const scale = Math.min(Math.max(room - 2 * RIM, RIM) / shape.width, Math.max(tallest - 2 * RIM, RIM) / shape.height)
  const width = shape.width * scale + 2 * RIM
  const height = shape.height * scale + 2 * RIM
  const px = (/** @type {number} */ x) => RIM + x * scale
  const py = (/** @type {number} */ y) => RIM + (shape.height - y) * scale
  const ring = shape.points.map(([x, y]) => `${px(x - shape.left)},${py(y - shape.low)}`).join(' ')
  const tap = (/** @type {any} */ event) => {
    if (!onPick || !wide) return
    const seen = event.currentTarget.getBoundingClientRect()
    const x = Math.min(Math.max((event.clientX - seen.left - RIM) / scale, 0), shape.width)
    const y = shape.height - (event.clientY - seen.top - RIM) / scale
    const chosen = panelAt(area, wide, x, count)
    const ends_ = ends(area, middle(area, wide, chosen))
    onPick(chosen, Math.min(Math.max(y - ends_.low, 0), ends_.high - ends_.low))
  }
  const walks = Object.values(record.walks).filter((/** @type {any} */ walk) => !only || walk.id === only)
  const laid = walks.flatMap((/** @type {any} */ walk) => walk.placed ?? []).filter((/** @type {any} */ one) => one.area === area.id)
  const isLaid = (/** @type {number} */ n) => laid.some((/** @type {any} */ one) => n >= one.from && n <= one.to)
  const stations = Object.values(record.stations).filter((/** @type {any} */ one) => one.area === area.id && (!only || one.walk === only))
  const fixed = area.fixed_line && drawn(area.fixed_line.from_low_end, area.outline.unit)
  const clip = `cut-${area.id}`
  return html`<div class="plan" ref=${box}>
    <p class="edge-name up" aria-hidden="true">▲ ${say('toward_ridge')}</p>
    <svg width=${width} height=${height} viewBox=${`0 0 ${width} ${height}`} role="img" onClick=${onPick ? tap : undefined}
      class=${onPick ? 'pick' : ''} aria-label=${say('plan.label', { area: area.name, n: stations.length })}>
      <clipPath id=${clip}><polygon points=${ring} /></clipPath>
      <polygon class="ground" points=${ring} />
      <g clip-path=${`url(#${clip})`}>
        ${wide && Array.from({ length: count }, (_, i) => {
          const { from, to } = strip(area, wide, i + 1)
          return html`<rect key=${i} class=${(isLaid(i + 1) ? 'panel laid' : 'panel') + (panel === i + 1 ? ' chosen' : '')}
            x=${px(from)} y=${RIM} width=${(to - from) * scale} height=${shape.height * scale} />`
        })}
      </g>
      ${edges(area).map((edge, i) => html`<line key=${'e' + i} class=${'edge ' + edge.name} x1=${px(edge.from[0] - shape.left)} y1=${py(edge.from[1] - shape.low)}
        x2=${px(edge.to[0] - shape.left)} y2=${py(edge.to[1] - shape.low)} />`)}
      ${fixed !== null && fixed !== undefined && area.fixed_line && html`<line class="fixed" x1=${RIM - 14 * large} x2=${width - RIM + 14 * large} y1=${py(fixed)} y2=${py(fixed)} />`}
      ${wide && stations.map((/** @type {any} */ one) => {
        const x = middle(area, wide, one.panel)
        const y = ends(area, x).low + (drawn(one.from_low_end, area.outline.unit) ?? 0)
        const state = stateOf(record, definitions, one)
        return html`<${Mark} key=${one.id} x=${px(x)} y=${py(y)} large=${large} state=${state} />`
      })}
      ${wide && panel && at !== null && at !== undefined && html`<${Cross} large=${large} x=${px(middle(area, wide, panel))} y=${py(ends(area, middle(area, wide, panel)).low + at)} />`}
    </svg>
    <p class="edge-name down" aria-hidden="true">▼ ${say('toward_eave')}</p>
  </div>`
}

/** @param {any} area @param {number} wide @param {number} n */
function middle(area, wide, n) {
  const { from, to } = strip(area, wide, n)
  return (from + to) / 2
}

/** @param {{x: number, y: number, large: number, state: string}} props */
function Mark({ x, y, large, state }) {
  const shape = state === 'fail' ? html`<polygon points="0,-15 15,0 0,15 -15,0" />`
    : state === 'unsafe' || state === 'covered' ? html`<rect x="-12" y="-12" width="24" height="24" />` : html`<circle r="13" />`
  return html`<g class=${'mark ' + state} transform=${`translate(${x} ${y}) scale(${large})`}>${shape}<text text-anchor="middle" dy="6">${MARKS[state]}</text></g>`
}

/** The place just chosen. @param {{x: number, y: number, large: number}} props */
function Cross({ x, y, large }) {
  return html`<g class="cross" transform=${`translate(${x} ${y}) scale(${large})`}><circle r="16" /><path d="M-26 0H-8M8 0H26M0 -26V-8M0 8V26" /></g>`
}
