// The zone that the area's map gives for a place: proposed, and left to the person who stands there.

import { useEffect } from '../frame/view.js'
import { quantity } from '../frame/amount.js'
import { ask } from '../rules/ask.js'

/**
 * Puts the map's zone into the draft whenever panel or distance change, unless a person chose one for this very place.
 * @param {{record: any, area: any, draft: any, change: (patch: any) => any}} place `draft.zone_at`: the place that a zone was chosen for by hand
 */
export function useZoneHere({ record, area, draft, change }) {
  const { panel = null, at = null } = draft ?? {}
  useEffect(() => {
    let here = true
    if (area && panel !== null && at !== null && area.zone_map && draft.zone_at !== placeKey(draft)) {
      ask({ call: 'place_at', area, assembly: record.assemblies[area.assembly] ?? null, panel: Math.round(Number(panel)), from_low_end: quantity(at, area.outline.unit) })
        .then((found) => { if (here && found.zone) change((/** @type {any} */ now) => (now.zone_at === placeKey(now) ? {} : { zone: found.zone, zone_told: placeKey(now) })) }, () => {})
    }
    return () => { here = false }
  }, [area?.digest, panel, at])
}

/** @param {any} draft */
export function placeKey({ area, panel, at }) {
  return [area, panel, at].join('/')
}
