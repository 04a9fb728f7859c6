// Which roof area an item of a whole walk speaks of, where its rule needs one.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { Choice } from '../frame/choice.js'
import { sorted } from '../roof/order.js'

/** @param {any} record @param {any} walk @param {any} station @param {string} chosen */
export function areaOf(record, walk, station, chosen) {
  return record.areas[station ? station.area : chosen || walk.areas[0]] ?? null
}

/** @param {{record: any, walk: any, value: string, onChange: (id: string) => any}} props */
export function AreaPick({ record, walk, value, onChange }) {
  const areas = sorted(record.areas, 'name').filter((one) => walk.areas.includes(one.id))
  if (areas.length < 2) return null
  return html`<${Choice} name="area" label=${say('item.which_area')} value=${value} onChange=${onChange}
    options=${areas.map((/** @type {any} */ area) => ({ value: area.id, label: area.name }))} />`
}
