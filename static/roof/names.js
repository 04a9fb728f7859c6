// How a roofer would name a place.

import { say } from '../words/say.js'
import { shown } from '../frame/amount.js'
import { tape } from '../frame/tape.js'

/** `Quay slope · panel 12, its open leg · 18 ft from the low end · edge` @param {any} record @param {any} station */
export function placeName(record, station) {
  return [record.areas[station.area]?.name ?? '—', ...placeParts(station)].join(' · ')
}

/** @param {any} station */
export function placeParts(station) {
  return [say('place.panel', { n: station.panel, panel: station.panel }),
    say('place.from_low_end', { distance: station.chosen === 'drawn' ? tape(station.from_low_end) : shown(station.from_low_end) }), zoneName(station.zone)]
}

/** The engineer's own zone names, in the person's language where they are the usual three. @param {string} zone */
export function zoneName(zone) {
  return ['field', 'edge', 'corner'].includes(zone) ? say(`zone.${zone}`) : zone || '—'
}
