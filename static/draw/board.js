// The drawing board: outlines to scale with their panels, corners to drag, edges to tap, each named by its own line.

import { html, useRef, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { number } from '../words/number.js'
import { useRoom } from '../frame/room.js'
import { ribs, rims } from '../roof/chords.js'
import { box as extent, long, numbers, ring as typed, turning } from './outline.js'
import { snapped } from './snap.js'
import { ZoneHatch } from './zone_hatch.js'

const HOLD = 26 // px: half of what a glove must hit

/**
 * @param {{rings: {points: any, kind: string, name?: string}[], active: number, edges: (string | null)[], unit: string, seams: number[], held: [number, number, number][], panels: {from: number, to: number}[],
 *   selected: {what: string, at: number} | null, onSelect: (one: any) => any, onMove: (at: number, corner: [string, string]) => any, onLay?: (corner: [string, string]) => any, zones?: any, names?: string[], still?: boolean}} props
 *   `rings[0]`: the roof's; `active`: which one is drawn at; `seams`: x of the panels' seams; `held`: where panels are held; `panels`: their strips; `zones`: the rulebook's runs, with the assembly's `names`; `still`: nothing to drag
 */
export function Board({ rings, active, edges, unit, seams, held, panels, selected, onSelect, onMove, onLay, zones, names = [], still }) {
  const { box, room, large } = useRoom()
  const frame = useRef(/** @type {any} */ (null))
  const [hold, setHold] = useState(/** @type {any} */ (null))
  const all = rings.map((one, k) => numbers(one.points).map((point, i) => (hold && k === active && i === hold.i ? hold.at : point)))
  const view = hold?.view ?? fit(active ? near(numbers(rings[active].points)) : rings.flatMap((one) => numbers(one.points)), Boolean(onLay), unit, room, large)
  const { scale, rim, height, width } = view
  const at = (/** @type {number} */ x, /** @type {number} */ y) => /** @type {[number, number]} */ ([rim + (x - view.left) * scale, height - rim - (y - view.low) * scale])
  const back = (/** @type {any} */ event) => {
    const seen = frame.current.getBoundingClientRect()
    return [(event.clientX - seen.left - rim) / scale + view.left, (height - rim - (event.clientY - seen.top)) / scale + view.low]
  }
  const grab = (/** @type {number} */ i) => (/** @type {any} */ event) => {
    event.preventDefault()
    frame.current.setPointerCapture(event.pointerId)
    setHold({ i, at: all[active][i], view, from: [event.clientX, event.clientY], far: false })
  }
  const drag = (/** @type {any} */ event) => {
    if (!hold) return
    const far = hold.far || Math.hypot(event.clientX - hold.from[0], event.clientY - hold.from[1]) > 8
    const others = all.flatMap((points, k) => points.filter((_, i) => k !== active || i !== hold.i))
    if (far) setHold({ ...hold, far, at: snapped(back(event), others, unit, 12 / scale) })
  }
  const drop = () => {
    if (!hold) return
    if (hold.far) onMove(hold.i, typed([hold.at])[0])
    onSelect({ what: 'corner', at: hold.i })
    setHold(null)
  }
  const lay = (/** @type {any} */ event) => { if (onLay && !hold) onLay(typed([snapped(back(event), all[active], unit, 12 / scale)])[0]) }
  const mine = all[active]
  const outward = turning(mine) > 0 ? 1 : -1
  const roof = all[0].length > 2 && [all[0], ...all.filter((points, k) => rings[k].kind === 'opening' && points.length > 2)]
  return html`<div class="plan board" ref=${box}>
    <p class="edge-name up" aria-hidden="true">▲ ${say('toward_ridge')}</p>
    <svg ref=${frame} class=${onLay ? 'pick' : ''} width=${width} height=${height} viewBox=${`0 0 ${width} ${height}`} role="img" data-name="drawing" data-scale=${scale}
      aria-label=${say('draw.label', { n: mine.length })} onPointerMove=${drag} onPointerUp=${drop} onPointerCancel=${() => setHold(null)} onClick=${lay}>
      ${onLay && html`<path class="grid" d=${grid(view, unit)} />`}
      ${roof && html`<path class="ground" fill-rule="evenodd" d=${rims(roof, at)} />${zones && html`<${ZoneHatch} ...${{ zones, panels, names, at }} rings=${roof} />`}<path class="ribs" d=${ribs(roof, seams, at)} />`}
      ${all.map((points, k) => k !== active && points.length > 2 && html`<path key=${'r' + k} class=${'ring ' + rings[k].kind} d=${rims([points], at)} />`)}
      ${active > 0 && html`<path class=${'ring here ' + rings[active].kind} d=${rims([mine], at)} />`}
      ${held.length > 0 && html`<path class="fixed" d=${held.map(([from, to, y]) => `M${at(from, y).join(' ')}L${at(to, y).join(' ')}`).join('')} />`}
      ${panels[0] && roof && active === 0 && html`<g><text class="first" text-anchor="middle" x=${at((panels[0].from + panels[0].to) / 2, 0)[0]} y=${height - 6 * large} style=${{ fontSize: `${15 * large}px` }}>▲1</text></g>`}
      ${mine.map((from, i) => {
        if (onLay && i === mine.length - 1) return null
        const [ax, ay] = at(from[0], from[1]), [bx, by] = at(mine[(i + 1) % mine.length][0], mine[(i + 1) % mine.length][1])
        const on = selected?.what === 'edge' && selected.at === i
        const line = { x1: ax, y1: ay, x2: bx, y2: by }
        return html`<g key=${'e' + i} class=${'kind ' + (active ? 'plain' : edges[i] ?? 'none') + (on ? ' on' : '')}>
          ${on && html`<line class="chosen-edge" ...${line} />`}<line class="body" ...${line} /><line class="sign" ...${line} />
          <line class="hit" ...${line} data-edge=${i} onClick=${onLay ? undefined : () => onSelect({ what: 'edge', at: i })} /></g>`
      })}
      ${!onLay && mine.map((from, i) => html`<${Plate} key=${'p' + i} ...${{ large, width, height, outward }} from=${at(from[0], from[1])} to=${at(mine[(i + 1) % mine.length][0], mine[(i + 1) % mine.length][1])}
        words=${number(long(typed(mine), i).toFixed(4), unit)} always=${selected?.what === 'edge' && selected.at === i} />`)}
      ${!still && mine.map(([x, y], i) => {
        const [px, py] = at(x, y)
        const on = selected?.what === 'corner' && selected.at === i
        return html`<g key=${'c' + i} class=${on ? 'corner on' : 'corner'} transform=${`translate(${px} ${py})`}>
          <rect x=${-8 * large} y=${-8 * large} width=${16 * large} height=${16 * large} />${on && html`<path d="M-24 0H24M0 -24V24" />`}
          <circle class="hit" r=${HOLD} data-corner=${i} onPointerDown=${grab(i)} /></g>`
      })}
    </svg>
    <p class="edge-name down" aria-hidden="true">▼ ${say('toward_eave')}</p>
  </div>`
}

/** The length of an edge on a plate beside it, left out where it has no room. @param {any} props */
function Plate({ from, to, words, always, large, width, height, outward }) {
  const far = Math.hypot(to[0] - from[0], to[1] - from[1])
  const wide = (words.length * 9.5 + 12) * large, tall = 24 * large
  if (far < tall && !always) return null
  const off = outward * ((Math.abs(to[1] - from[1]) > Math.abs(to[0] - from[0]) ? wide : tall) / 2 + 10 * large)
  const x = Math.min(Math.max((from[0] + to[0]) / 2 - (off * (to[1] - from[1])) / (far || 1), wide / 2), width - wide / 2)
  const y = Math.min(Math.max((from[1] + to[1]) / 2 + (off * (to[0] - from[0])) / (far || 1), tall / 2), height - tall / 2)
  return html`<g class="plate" transform=${`translate(${x} ${y})`}><rect x=${-wide / 2} y=${-tall / 2} width=${wide} height=${tall} />
    <text text-anchor="middle" dy=${5.5 * large} style=${{ fontSize: `${16 * large}px` }}>${words}</text></g>`
}

/** @param {number[][]} points @param {boolean} open corners are still being laid @param {string} unit @param {number} room @param {number} large */
function fit(points, open, unit, room, large) {
  const least = open ? { ft: 40, m: 12 }[unit] ?? 40 : 0
  const { left, low, width, height } = extent(open ? [[0, 0], [least, least * 0.8], ...points] : points)
  const rim = Math.min(58 * large, room / 4)
  const spare = open ? 1.15 : 1.04
  const scale = Math.min((room - 2 * rim) / (width * spare || 1), (Math.max(260, innerHeight * 0.46) - rim) / (height * spare || 1))
  return { left, low, scale, rim, width: room, height: height * spare * scale + 2 * rim }
}

/** An inner outline with as much of the roof around it as it is large. @param {number[][]} points */
function near(points) {
  const { left, low, width, height } = extent(points)
  return [[left - width / 2, low - height / 2], [left + width * 1.5, low + height * 1.5]]
}

/** @param {any} view @param {string} unit */
function grid({ left, low, scale, rim, width, height }, unit) {
  const cell = unit === 'm' ? 1 : 5
  let path = ''
  for (let x = Math.ceil(left / cell) * cell; (x - left) * scale <= width - rim; x += cell) path += `M${rim + (x - left) * scale} 0V${height}`
  for (let y = Math.ceil(low / cell) * cell; (y - low) * scale <= height - rim; y += cell) path += `M0 ${height - rim - (y - low) * scale}H${width}`
  return path
}
