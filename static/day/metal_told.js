// The metal's temperature for a mark: optional, measured as for any reading, shared with the walk that is open.

import { html, useEffect } from '../frame/view.js'
import { MetalNow } from '../instruments/metal_now.js'
import { useMetal } from '../instruments/use_metal.js'

const ASKS = { rule: { inputs: { metal: 'reading.metal_temperature' } } }

/** @param {{record: any, person: any, lot: any, walk: any, tell: (metal: any) => any}} props `walk`: today's, or null; `tell`: what speaks now, or null */
export function MetalTold({ record, person, lot, walk, tell }) {
  const metal = useMetal({ record, person, walk: walk ?? { id: lot.id, by: person.id }, item: ASKS, answer: null, picture: null, read: null })
  const speaks = metal && !metal.again ? metal.speaks : null
  useEffect(() => { tell(speaks) }, [speaks?.at, speaks?.value])
  return html`<${MetalNow} ...${{ record, metal, forget: () => {} }} />`
}
