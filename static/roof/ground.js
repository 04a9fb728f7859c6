// The lie of one area on the plan: its ground with hatches of state or zone, seams, edges, fixed line. In metres; the
// plan scales it, and its lines stay as wide as they are.

import { html } from '../frame/view.js'
import { band } from './areas.js'
import { zoneHatch } from './hatches.js'

/**
 * @param {{shape: import('./areas.js').Shape, runs: {from: number, to: number, state: string}[], zones: any, names: string[], dense: boolean, looked: boolean, panel: number | null}} props
 *   `runs`: states of panels, or none; `zones`: the rulebook's zone runs of every panel, or null; `dense`: the seams have room
 */
export function Ground({ shape, runs, zones, names, dense, looked, panel }) {
  const { area, rim } = shape
  const hatched = zones ? zoned(shape, zones, names) : stated(shape, runs)
  return html`<g class=${looked ? 'area looked' : 'area'}>
    <path class="ground" fill-rule="evenodd" d=${rim} />
    ${(Object.keys(hatched).length > 0 || panel) && html`<clipPath id=${`rim-${area.id}`}><path clip-rule="evenodd" d=${rim} /></clipPath>
      <g clip-path=${`url(#rim-${area.id})`}>${Object.entries(hatched).map(([name, path]) => html`<path key=${name} fill=${`url(#roof-${name})`} data-hatch=${name} d=${path} />`)}
        ${panel && html`<path class="chosen" d=${band(shape, panel, panel, shape.low, shape.high)} />`}</g>`}
    ${dense && html`<path class="ribs" d=${shape.ribs} />`}
    ${Object.entries(shape.edges).map(([kind, path]) => html`<g key=${kind} class=${`kind ${kind}`}><path class="body" d=${path} />${looked && html`<path class="sign" d=${path} />`}</g>`)}
    ${shape.held && html`<path class="fixed" d=${shape.held} />`}
  </g>`
}

/** @param {any} shape @param {any[]} runs @returns {Record<string, string>} hatch -> path */
function stated(shape, runs) {
  /** @type {Record<string, string>} */
  const paths = {}
  for (const { from, to, state } of runs) if (state !== 'to_come') paths[state] = (paths[state] ?? '') + band(shape, from, to, shape.low, shape.high)
  return paths
}

/** @param {any} shape @param {[number, [number, number, string | null][]][]} zones @param {string[]} names @returns {Record<string, string>} */
function zoned(shape, zones, names) {
  /** @type {Record<string, string>} */
  const paths = {}
  for (const [panel, runs] of zones) {
    runs.forEach(([low, high, zone], i) => {
      const name = zoneHatch(zone, names)
      // The outermost runs go on to the rim: the seam's own ends are not those of the whole strip.
      const [bottom, top] = [i === 0 ? shape.low : low, i === runs.length - 1 ? shape.high : high]
      if (name !== 'zone-0') paths[name] = (paths[name] ?? '') + band(shape, panel, panel, bottom, top)
    })
  }
  return paths
}
