// The drawing of one area and its three further screens, by the address: `draw/AREA/openings`; `new` is the one begun.

import { html } from '../frame/view.js'
import { NotYet } from '../frame/opening.js'
import { Draw } from './draw.js'
import { Openings } from './openings.js'
import { Placing } from './placing.js'
import { Zones } from './zones.js'

const STEPS = /** @type {Record<string, any>} */ ({ openings: Openings, zones: Zones, place: Placing })

/** @param {{job: string, record: any, person: any, rest: string[]}} props */
export function Drawing({ rest, ...props }) {
  const [area = 'new', step = ''] = rest
  if (area !== 'new' && !props.record.areas[area]) return html`<${NotYet} key=${area} job=${props.job} />`
  return html`<${STEPS[step] ?? Draw} ...${props} rest=${[area]} />`
}
