// The proposed zones on the drawing board, hatched as on the roof plan.

import { html } from '../frame/view.js'
import { Hatches, zoneHatch } from '../roof/hatches.js'
import { rims } from '../roof/chords.js'
import { box } from './outline.js'

/** @param {{zones: any[], panels: {from: number, to: number}[], names: string[], rings: number[][][], at: (x: number, y: number) => [number, number]}} props `zones`: the rulebook's runs of every panel */
export function ZoneHatch({ zones, panels, names, rings, at }) {
  const { low, height } = box(rings[0])
  /** @type {Record<string, string>} */
  const paths = {}
  for (const [panel, runs] of zones) {
    const strip = panels[panel - 1]
    if (!strip) continue
    runs.forEach((/** @type {any} */ [from, to, zone], /** @type {number} */ i) => {
      const name = zoneHatch(zone, names)
      const [bottom, top] = [i === 0 ? low : from, i === runs.length - 1 ? low + height : to]
      paths[name] = (paths[name] ?? '') + rims([[[strip.from, bottom], [strip.to, bottom], [strip.to, top], [strip.from, top]]], at)
    })
  }
  return html`<${Hatches} of="board" scale=${1} names=${Object.keys(paths)} /><clipPath id="board-rim"><path clip-rule="evenodd" d=${rims(rings, at)} /></clipPath>
    <g clip-path="url(#board-rim)">${Object.entries(paths).map(([name, path]) => html`<path key=${name} fill=${`url(#board-${name})`} d=${path} />`)}</g>`
}
