// A drawn place becomes a station of today's walk; without one the safety gate comes first, and then the way back here.

import { enter } from '../frame/enter.js'
import { go } from '../frame/route.js'
import { uuid7 } from '../entry/uuid7.js'

/**
 * @param {{job: string, walk: any, lot: any, area: string, panel: number, place: any, chosen?: 'drawn' | 'both_ways' | 'hand', reached: 'yes' | 'unsafe' | 'covered', here: string[]}} what
 *   `walk` today's, or null; `place` `{from_low_end, zone}`; `here`: the steps to come back to
 */
export async function lookAt({ job, walk, lot, area, panel, place, chosen = 'drawn', reached, here }) {
  if (!walk) return go('job', job, 'start', 'then', ...here)
  const id = uuid7()
  await enter({ job, kind: 'station', subject: id, body: { walk: walk.id, area, panel, from_low_end: place.from_low_end, zone: place.zone ?? '', chosen, reached, lot: lot.id } })
  if (reached === 'yes') go('job', job, 'station', id, ...here)
}
