// A drawn place in a line: `7 ft 6 in from its low end, edge zone`.

import { say } from '../words/say.js'
import { zoneName } from '../roof/names.js'
import { tape } from '../frame/tape.js'

/** @param {{from_low_end: any, zone: string | null}} place */
export function placeLine({ from_low_end: distance, zone }) {
  if (!zone) return say('place.from_low_end', { distance: tape(distance) })
  return say('day.place', { distance: tape(distance), zone: zoneName(zone) })
}
