// One roof area drawn to scale: seams as ribs, edges by name, the fixed line, and each place looked at.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { drawn } from '../frame/amount.js'
import { useRoom } from '../frame/room.js'
import { rims } from './chords.js'
import { uncrowded } from './crowd.js'
import { Hatches, zoneHatch } from './hatches.js'
import { useLaid } from './layouts.js'
import { Cross, Mark } from './marks.js'
import { ringsOf } from './placing.js'
import { coverage, edges, ends, extent, panelAt, seam, strip } from './shape.js'
import { stateOf } from './state.js'
import { heldAt, strips } from './strips.js'

const BASE = 18 // px of the root's text at its usual size: marks grow with the text a person chose

/**
 * @param {{record: any, definitions: any[], area: any, tallest: number, panel?: number | null, at?: number | null,
 *   onPick?: (panel: number, fromLowEnd: number) => void, only?: string | null}} props
 *   `at`: chosen distance from the panel's low end in the outline's unit; `only`: a walk to show alone
 */
export function Plan({ record, definitions, area, tallest, panel, at: chosenAt, onPick, only }) {
  const { box, room, large } = useRoom()
  const shape = extent(area)
  const wide = coverage(area, record.assemblies[area.assembly])
  const count = area.panel_count ?? (wide ? Math.ceil(shape.width / wide - 1e-6) : 0)
  const RIM = BASE * large // around the drawing, so that a mark at the very edge is whole
  const scale = Math.min(Math.max(room - 2 * RIM, RIM) / shape.width, Math.max(tallest - 2 * RIM, RIM) / shape.height)
  const width = shape.width * scale + 2 * RIM
  const height = shape.height * scale + 2 * RIM
  const px = (/** @type {number} */ x) => RIM + x * scale
  const py = (/** @type {number} */ y) => RIM + (shape.height - y) * scale
  const at = (/** @type {number} */ x, /** @type {number} */ y) => /** @type {[number, number]} */ ([px(x - shape.left), py(y - shape.low)])
  const rings = ringsOf(area)
  const rim = rims(rings, at)
  const names = (record.assemblies[area.assembly]?.zones ?? []).map((/** @type {any} */ one) => one.name)
  const zones = useLaid('zones', record, [area], Boolean(area.zone_map))[area.id] ?? []
  const tap = (/** @type {any} */ event) => {
    if (!onPick || !wide) return
    const seen = event.currentTarget.getBoundingClientRect()
    const x = Math.min(Math.max((event.clientX - seen.left - RIM) / scale, 0), shape.width)
    const y = shape.height - (event.clientY - seen.top - RIM) / scale
    const chosen = panelAt(area, wide, x, count)
    const own = ends(area, seam(area, wide, chosen, count))
    onPick(chosen, Math.min(Math.max(y - own.low, 0), own.high - own.low))
  }
  const walks = Object.values(record.walks).filter((/** @type {any} */ walk) => !only || walk.id === only)
  const laid = walks.flatMap((/** @type {any} */ walk) => walk.placed ?? []).filter((/** @type {any} */ one) => one.area === area.id)
  const isLaid = (/** @type {number} */ n) => laid.some((/** @type {any} */ one) => n >= one.from && n <= one.to)
  const stations = Object.values(record.stations).filter((/** @type {any} */ one) => one.area === area.id && (!only || one.walk === only))
  const line = area.fixed_line
  const held = line && wide ? heldAt(rings, strips(rings[0], wide, area.start), line.end ?? null, drawn(line.from_low_end, area.outline.unit) ?? 0) : []
  const clip = `cut-${area.id}`
  return html`<div class="plan" ref=${box}>
    <p class="edge-name up" aria-hidden="true">▲ ${say('toward_ridge')}</p>
    <svg width=${width} height=${height} viewBox=${`0 0 ${width} ${height}`} role="img" onClick=${onPick ? tap : undefined}
      class=${onPick ? 'pick' : ''} aria-label=${say('plan.label', { area: area.name, n: stations.length })}>
      <clipPath id=${clip}><path clip-rule="evenodd" d=${rim} /></clipPath>
      <path class="ground" fill-rule="evenodd" d=${rim} />
      ${zones.length > 0 && html`<${Hatches} of=${clip} scale=${1} names=${[1, 2, 3, 4, 5].map((n) => `zone-${n}`)} />`}
      <g clip-path=${`url(#${clip})`}>
        ${wide && Array.from({ length: count }, (_, i) => {
          const { from, to } = strip(area, wide, i + 1)
          return html`<rect key=${i} class=${(isLaid(i + 1) ? 'panel laid' : 'panel') + (panel === i + 1 ? ' chosen' : '')}
            x=${px(from)} y=${RIM} width=${(to - from) * scale} height=${shape.height * scale} />`
        })}
        ${wide && zones.map((/** @type {any} */ [n, runs]) => runs.map((/** @type {any} */ [low, high, zone], /** @type {number} */ i) => {
          const name = zoneHatch(zone, names)
          const { from, to } = strip(area, wide, n)
          const [top, bottom] = [i === runs.length - 1 ? RIM : py(high - shape.low), i === 0 ? height - RIM : py(low - shape.low)]
          return name !== 'zone-0' && html`<rect key=${`${n}/${i}`} class="zone-hatch" fill=${`url(#${clip}-${name})`} x=${px(from)} y=${top} width=${(to - from) * scale} height=${Math.max(bottom - top, 0)} />`
        }))}
      </g>
      ${edges(area).map((edge, i) => html`<line key=${'e' + i} class=${'edge ' + edge.name} x1=${px(edge.from[0] - shape.left)} y1=${py(edge.from[1] - shape.low)}
        x2=${px(edge.to[0] - shape.left)} y2=${py(edge.to[1] - shape.low)} />`)}
      ${held.length > 0 && html`<path class="fixed" d=${held.map(([from, to, y]) => `M${at(from, y).join(' ')}L${at(to, y).join(' ')}`).join('')} />`}
      ${wide && uncrowded(stations.map((/** @type {any} */ one) => {
        const x = seam(area, wide, one.panel, count)
        const y = ends(area, x).low + (drawn(one.from_low_end, area.outline.unit) ?? 0)
        return { id: one.id, x: px(x), y: py(y), state: stateOf(record, definitions, one) }
      }), 30 * large).map(({ id, x, y, state }) => html`<${Mark} key=${id} ...${{ x, y, large, state }} />`)}
      ${wide && panel && chosenAt !== null && chosenAt !== undefined && html`<${Cross} large=${large} x=${px(seam(area, wide, panel, count))} y=${py(ends(area, seam(area, wide, panel, count)).low + chosenAt)} />`}
    </svg>
    <p class="edge-name down" aria-hidden="true">▼ ${say('toward_eave')}</p>
  </div>`
}
