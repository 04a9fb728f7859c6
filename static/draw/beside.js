// All placed areas from above, this one among them; a tap on an edge says which edge is meant.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { useRoom } from '../frame/room.js'
import { rims } from '../roof/chords.js'
import { toPlan } from '../roof/placing.js'
import { North } from '../roof/north.js'

/** @param {{shown: any[], mine: string, own: number | null, other: string, pick: (area: string, edge: number) => any}} props */
export function Beside({ shown, mine, own, other, pick }) {
  const { box, room, large } = useRoom()
  const [west, south, east, north] = [0, 1, 2, 3].map((k) => Math[k < 2 ? 'min' : 'max'](...shown.map((one) => one.box[k])))
  const rim = 30 * large
  const tall = Math.max(240, innerHeight * 0.4)
  const scale = Math.min((room - 2 * rim) / (east - west || 1), (tall - 2 * rim) / (north - south || 1))
  const height = (north - south) * scale + 2 * rim
  const px = (/** @type {[number, number]} */ [e, n]) => /** @type {[number, number]} */ ([rim + (e - west) * scale, height - rim - (n - south) * scale])
  return html`<div class="plan board" ref=${box}>
    <svg class="pick" width=${room} height=${height} viewBox=${`0 0 ${room} ${height}`} role="img" data-name="beside-plan" aria-label=${say('plan.roof', { n: shown.length })}>
      ${shown.map(({ area, rings, place }) => html`<path key=${area.id} class=${area.id === mine ? 'ring here zone' : 'ground'} d=${rims(rings.slice(0, 1), (x, y) => px(toPlan(place, x, y)))} />`)}
      ${shown.map(({ area, rings, place }) => rings[0].map((/** @type {number[]} */ from, /** @type {number} */ i) => {
        const [[x1, y1], [x2, y2]] = [from, rings[0][(i + 1) % rings[0].length]].map(([x, y]) => px(toPlan(place, x, y)))
        const on = area.id === mine ? own === i : other === `${area.id}/${i}`
        return html`<g key=${area.id + i} class=${`kind ${area.edges?.[i] ?? 'none'}`}>${on && html`<line class="chosen-edge" ...${{ x1, y1, x2, y2 }} />`}
          <line class="body" ...${{ x1, y1, x2, y2 }} /><line class="hit thin" ...${{ x1, y1, x2, y2 }} data-area=${area.id} data-edge=${i} onClick=${() => pick(area.id, i)} /></g>`
      }))}
      <${North} x=${room - 22 * large} y=${26 * large} large=${large} />
    </svg>
  </div>`
}
