// The drawn places of a panel that is held, stop or no stop: asked of the rulebook, never chosen here.

import { useEffect, useState } from '../frame/view.js'
import { ask } from '../rules/ask.js'

/**
 * @param {any} record @param {any} lot @param {number} panel @param {number} count
 * @returns {any[] | null} null until they are there; each with the station that was made of it, if any
 */
export function usePlaces(record, lot, panel, count) {
  const [places, setPlaces] = useState(/** @type {any[] | null} */ (null))
  useEffect(() => {
    let here = true
    ask({ call: 'places', record, lot: lot.id, panel, count }).then((found) => { if (here) setPlaces(found) }, () => { if (here) setPlaces([]) })
    return () => { here = false }
  }, [lot.id, lot.digest, panel, count])
  return places && places.map((place) => ({ ...place, station: place.station ?? made(record, lot, panel, place) }))
}

/** @param {any} record @param {any} lot @param {number} panel @param {any} place */
function made(record, lot, panel, place) {
  const same = Object.values(record.stations).find((/** @type {any} */ one) => one.lot === lot.id && one.panel === panel && one.chosen === 'drawn' &&
    one.from_low_end.value === place.from_low_end.value && one.from_low_end.unit === place.from_low_end.unit)
  return /** @type {any} */ (same)?.id ?? null
}
