// Panels set up to a number, as an entry: each says for itself what was set, what changed and which holds were gone over.

import { enterCounted } from '../frame/enter.js'
import { uuid7 } from '../entry/uuid7.js'
import { areaOf } from './standing.js'

/**
 * @param {{job: string, lot: any, to: number, change?: string[], night?: boolean, against?: number[], metal?: any, draft?: string}} what
 *   `metal`: `{value, unit, uncertainty, by}` of the last ten minutes, or null
 */
export function enterMark({ job, lot, to, change = [], night = false, against = [], metal = null, draft }) {
  const heat = metal ? { metal_temperature: { value: metal.value, unit: metal.unit }, metal_temperature_by: metal.by, metal_uncertainty: metal.uncertainty } : {}
  return enterCounted({ job, kind: 'mark', subject: uuid7(), draft, body: { lot: lot.id, area: areaOf(lot), to, change, night, against, ...heat } })
}
