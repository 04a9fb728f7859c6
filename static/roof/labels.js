// Names, panel numbers, states' signs and places looked at: in the size of text, wherever the plan is moved.

import { html } from '../frame/view.js'
import { drawn } from '../frame/amount.js'
import { lowEnd, seamOf } from './areas.js'
import { chords } from './chords.js'
import { uncrowded } from './crowd.js'
import { STATES } from './hatches.js'
import { Mark } from './marks.js'
import { toPlan } from './placing.js'
import { onScreen } from './sight.js'

const STRIDES = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000]

/** A word on a plate. @param {{at: number[], words: string, large: number, name?: string, on?: boolean}} props */
export function Plate({ at: [x, y], words, large, name = 'plate', on }) {
  const wide = (words.length * 9.6 + 12) * large, tall = 26 * large
  return html`<g class=${on ? name + ' on' : name} transform=${`translate(${x} ${y})`}><rect x=${-wide / 2} y=${-tall / 2} width=${wide} height=${tall} />
    <text text-anchor="middle" dy=${6 * large} style=${{ fontSize: `${16 * large}px` }}>${words}</text></g>`
}

/** The areas' names where they have room, else the numbers of the list. @param {any} props */
export function Names({ shapes, sight, width, height, large, looked }) {
  return shapes.map((/** @type {any} */ { area, box }, /** @type {number} */ i) => {
    const [west, south, east, north] = box
    const at = onScreen(sight, (west + east) / 2, (south + north) / 2)
    const room = (east - west) * sight.scale
    const words = [area.name, String(i + 1)].find((one) => (one.length * 9.6 + 16) * large < room)
    const half = ((words?.length ?? 0) * 4.8 + 8) * large
    if (!words || area.id === looked || (north - south) * sight.scale < 18 * large || at[0] < half || at[0] > width - half || at[1] < 14 * large || at[1] > height - 14 * large) return null
    return html`<${Plate} key=${area.id} ...${{ at, words, large }} />`
  })
}

/** Numbers of the panels of the area looked at, as many as can be read, each at the low end of what is seen of it. @param {any} props */
export function Numbers({ shape, sight, width, height, large, panel }) {
  const { panels, rings, place, wide } = shape
  const each = (wide ?? 0) * place.metre * sight.scale
  const digits = String(panels.length).length
  const need = (digits * 9.6 + 18) * large
  const stride = STRIDES.find((one) => one * each >= need) ?? panels.length
  const rim = 16 * large
  return panels.map((/** @type {any} */ { from, to }, /** @type {number} */ i) => {
    const n = i + 1
    if (n !== panel && (n % stride && n !== 1)) return null
    if (n !== panel && panel && Math.abs(n - panel) * each < need) return null
    const pieces = chords(rings, (from + to) / 2)
    if (!pieces.length) return null
    const x = (from + to) / 2
    const [a, b] = [pieces[0][0], pieces[pieces.length - 1][1]].map((y) => { const [e, north] = toPlan(place, x, y); return onScreen(sight, e, north) })
    const at = firstSeen(a, b, rim + (need - 18 * large) / 2, rim, width, height)
    return at && html`<${Plate} key=${n} name="plate panel-number" words=${String(n)} on=${n === panel} ...${{ at, large }} />`
  })
}

/** The first point from a to b that stands clear of the rim. @param {number[]} a @param {number[]} b @param {number} side @param {number} rim @param {number} width @param {number} height */
function firstSeen(a, b, side, rim, width, height) {
  const far = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1
  for (let t = Math.min(rim / far, 0.5); t <= 1; t += Math.max(8 / far, 0.005)) {
    const at = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]
    if (at[0] >= side && at[0] <= width - side && at[1] >= rim && at[1] <= height - rim) return at
  }
  return null
}

/** The sign of each run of panels in one state, where it has room. @param {any} props */
export function Signs({ shape, runs, sight, width, height, large }) {
  const { panels, rings, place, wide } = shape
  return runs.map((/** @type {any} */ { from, to, state }) => {
    const each = (wide ?? 0) * place.metre * sight.scale * (to - from + 1)
    if (!STATES[state] || each < 24 * large || !panels[to - 1]) return null
    const x = (Math.min(panels[from - 1].from, panels[to - 1].from) + Math.max(panels[from - 1].to, panels[to - 1].to)) / 2
    const pieces = chords(rings, x)
    if (!pieces.length) return null
    const [e, n] = toPlan(place, x, pieces[0][0] * 0.3 + pieces[pieces.length - 1][1] * 0.7)
    const at = onScreen(sight, e, n)
    if (at[0] < 14 * large || at[0] > width - 14 * large || at[1] < 14 * large || at[1] > height - 14 * large) return null
    return html`<${Plate} key=${`${from}-${state}`} name="plate sign-plate" words=${STATES[state]} ...${{ at, large }} />`
  })
}

/** Panels that a lot's draw has shown, marked near their high end. @param {any} props */
export function Sample({ shape, sample, sight, width, height, large }) {
  return sample.map((/** @type {any} */ { lot, panel }) => {
    if (!shape.panels[panel - 1]) return null
    const { from, to } = shape.panels[panel - 1]
    const pieces = chords(shape.rings, (from + to) / 2)
    if (!pieces.length) return null
    const [low, high] = [pieces[0][0], pieces[pieces.length - 1][1]]
    const [x, y] = onScreen(sight, .../** @type {[number, number]} */ (toPlan(shape.place, (from + to) / 2, low + (high - low) * 0.88)))
    if (x < 12 * large || x > width - 12 * large || y < 12 * large || y > height - 12 * large) return null
    return html`<path key=${`${lot}/${panel}`} class="sample" transform=${`translate(${x} ${y}) scale(${large})`} d="M-10 -9H10L0 10Z" />`
  })
}

/** The places looked at, with what they came to: a pass gives way where marks stand close. @param {any} props `states`: by station id */
export function Looked({ shapes, stations, states, sight, width, height, large }) {
  const marks = shapes.flatMap((/** @type {any} */ shape) => stations.filter((/** @type {any} */ one) => one.area === shape.area.id && shape.panels[one.panel - 1]).map((/** @type {any} */ one) => {
    const far = drawn(one.from_low_end, shape.area.outline.unit) ?? 0
    const [e, n] = toPlan(shape.place, seamOf(shape, one.panel), lowEnd(shape, one.panel) + far)
    const [x, y] = onScreen(sight, e, n)
    return { id: one.id, x, y, state: states[one.id] }
  })).filter((/** @type {any} */ { x, y }) => x >= 16 * large && x <= width - 16 * large && y >= 16 * large && y <= height - 16 * large)
  return uncrowded(marks, 26 * large).map((/** @type {any} */ { id, x, y, state }) => html`<${Mark} key=${id} ...${{ x, y, large: large * 0.8, state }} />`)
}

/** The places of the area looked at that are near the view, as ticks across their seams, counted off leg by leg. @param {any} props */
export function ticks({ shape, legs, sight, width, height }) {
  let path = ''
  const tick = 5
  for (const [panel, own] of legs) {
    if (!shape.panels[panel - 1]) continue
    const x = seamOf(shape, panel)
    for (const [first, , spacing, count] of own) {
      if (spacing * shape.place.metre * shape.place.cos * sight.scale < 7) return ''
      const [a, b] = [first, first + (count - 1) * spacing].map((y) => { const [e, n] = toPlan(shape.place, x, y); return onScreen(sight, e, n) })
      const [from, to] = between(a, b, count, width, height)
      for (let i = from; i <= to; i += 1) {
        const share = count > 1 ? i / (count - 1) : 0
        const px = Math.round((a[0] + (b[0] - a[0]) * share) * 10) / 10, py = Math.round((a[1] + (b[1] - a[1]) * share) * 10) / 10
        path += `M${px - tick} ${py}h${2 * tick}M${px} ${py - tick}v${2 * tick}`
      }
    }
  }
  return path
}

/** Which of `count` evenly spaced points from a to b may be seen. @param {number[]} a @param {number[]} b @param {number} count @param {number} width @param {number} height */
function between(a, b, count, width, height) {
  let [from, to] = [0, count - 1]
  for (const [axis, most] of [[0, width], [1, height]]) {
    const step = count > 1 ? (b[axis] - a[axis]) / (count - 1) : 0
    if (Math.abs(step) < 1e-9) {
      if (a[axis] < 0 || a[axis] > most) return [0, -1]
      continue
    }
    const ends = [-a[axis] / step, (most - a[axis]) / step].sort((p, q) => p - q)
    from = Math.max(from, Math.ceil(ends[0]))
    to = Math.min(to, Math.floor(ends[1]))
  }
  return [from, to]
}
