// All areas of the roof from above, placed together, north up: outlines first, then seams, states, zones and, of the
// area looked at, panels and places.

import { html, useEffect, useMemo, useRef, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { useRoom } from '../frame/room.js'
import { placeAt, shapes as shapesOf } from './areas.js'
import { Ground } from './ground.js'
import { Hatches, STATES } from './hatches.js'
import { Looked, Names, Numbers, Sample, Signs, ticks } from './labels.js'
import { North } from './north.js'
import { Pad } from './pad.js'
import { toArea } from './placing.js'
import { shownSample } from './sample.js'
import { onPlan } from './sight.js'
import { useSight } from './use_sight.js'

const FRAME = 12 // px of its border
const ROOM = 5 // px between seams: nearer they are a grey that says nothing

/**
 * @param {{record: any, areas: any[], tallest: number, states: Record<string, string>, stations: any[], show?: string, zones?: Record<string, any>, legs?: any, looked?: string | null, panel?: number | null,
 *   onLook: (area: string, place: {panel: number, far: number} | null, twice: boolean) => any, pad?: boolean}} props
 *   `states`: of stations by id; `zones`: the rulebook's zone runs by area; `legs`: its stations of the area looked at; `pad`: with buttons to move by
 */
export function RoofPlan({ record, areas, tallest, states, stations, show = 'state', zones = {}, legs = null, looked = null, panel = null, onLook, pad }) {
  const { box, room, large } = useRoom()
  const [ready, setReady] = useState(false)
  useEffect(() => {
    const later = requestAnimationFrame(() => requestAnimationFrame(() => setReady(true))) // outlines are on the screen first
    return () => cancelAnimationFrame(later)
  }, [])
  const shapes = useMemo(() => shapesOf(record, areas), [record, areas])
  const all = bounds(shapes)
  const width = Math.max(room - FRAME, 100)
  const rim = 24 * large
  const height = Math.round(pad ? Math.min(tallest, Math.max(room, 260)) : Math.min(tallest, Math.max(220, ((all[3] - all[1]) / (all[2] - all[0] || 1)) * (width - 2 * rim) + 2 * rim)))
  const tap = (/** @type {number} */ px, /** @type {number} */ py, /** @type {boolean} */ twice) => {
    const [east, north] = onPlan(seen.sight, px, py)
    for (const shape of [...shapes].sort((a, b) => Number(b.area.id === looked) - Number(a.area.id === looked))) {
      const place = placeAt(shape, ...toArea(shape.place, east, north))
      if (!place) continue
      if (twice) seen.zoom(2.5, [px, py])
      return onLook(shape.area.id, place, twice)
    }
    if (twice) seen.zoom(2.5, [px, py])
  }
  const seen = useSight({ box: all, width, height, rim, onTap: tap })
  const { sight } = seen
  const here = shapes.find((one) => one.area.id === looked)
  // An area chosen beside the plan comes into view by itself.
  useEffect(() => { if (pad) { if (here) seen.look(here.box); else seen.fit() } }, [looked, width])
  const runs = (/** @type {any} */ shape) => (show === 'state' ? record.coverage?.[shape.area.id]?.runs ?? [] : [])
  const grounds = useRef(/** @type {Map<string, {key: string, drawn: any}>} */ (new Map()))
  const ground = (/** @type {import('./areas.js').Shape} */ shape) => {
    const { area } = shape
    const names = (record.assemblies[area.assembly]?.zones ?? []).map((/** @type {any} */ one) => one.name)
    const dense = ready && (shape.wide ?? 0) * shape.place.metre * sight.scale >= ROOM
    const own = show === 'zones' ? zones[area.id] ?? null : null
    const key = [area.digest, shape.rim.length, shape.place.east, shape.place.north, dense, ready, show, Boolean(own), area.id === looked && [panel], JSON.stringify(runs(shape))].join('|')
    const before = grounds.current.get(area.id)
    // The same element again where nothing of it changed: moving about draws no area anew.
    const drawn = before?.key === key ? before.drawn : html`<${Ground} key=${area.id} ...${{ shape, runs: ready ? runs(shape) : [], zones: ready ? own : null, names, dense, looked: area.id === looked, panel: area.id === looked ? panel : null }} />`
    grounds.current.set(area.id, { key, drawn })
    return drawn
  }
  const view = { sight, width, height, large }
  const hatches = show === 'zones' ? [0, 1, 2, 3, 4, 5].map((n) => `zone-${n}`) : Object.keys(STATES)
  const marks = stations.filter((one) => !here || one.area === looked)
  return html`<div class="roofplan" ref=${box}>
    <div class=${seen.whole ? 'plan-frame whole' : 'plan-frame near'} data-name="roof-plan" data-scale=${sight.scale.toFixed(3)} data-ready=${ready} ...${seen.on}>
    <svg ref=${seen.mover} width=${width} height=${height} viewBox=${`0 0 ${width} ${height}`} role="img" aria-label=${say('plan.roof', { n: areas.length })}>
      <${Hatches} of="roof" scale=${sight.scale} names=${hatches} />
      <g>
        <g transform=${`matrix(${sight.scale} 0 0 ${-sight.scale} ${sight.x} ${sight.y})`}>${shapes.map(ground)}</g>
        ${here && legs && html`<path class="ticks" d=${ticks({ shape: here, legs, ...view })} />`}
        ${ready && show === 'state' && shapes.map((shape) => html`<g key=${shape.area.id}><${Signs} ...${{ shape, runs: runs(shape), ...view }} /></g>`)}
        ${ready && shapes.map((shape) => html`<g key=${'s' + shape.area.id}><${Sample} ...${{ shape, sample: shownSample(record, shape.area.id), ...view }} /></g>`)}
        <${Names} ...${{ shapes, looked, ...view }} />
        ${here && html`<${Numbers} ...${{ shape: here, panel, ...view }} />`}
        ${ready && html`<${Looked} ...${{ shapes, states, stations: marks, ...view }} />`}
      </g>
    </svg>
    <svg class="needle" width=${60 * large} height=${64 * large} aria-hidden="true"><${North} x=${30 * large} y=${28 * large} large=${large} /></svg></div>
    ${pad && html`<${Pad} ...${{ seen }} />`}
  </div>`
}

/** @param {import('./areas.js').Shape[]} shapes */
function bounds(shapes) {
  if (!shapes.length) return [0, 0, 1, 1]
  return [0, 1, 2, 3].map((k) => Math[k < 2 ? 'min' : 'max'](...shapes.map((one) => one.box[k])))
}
