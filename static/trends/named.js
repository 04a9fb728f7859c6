// What a key of the trends is called: an area, an item, a crew, a panel system.

import { pick, say } from '../words/say.js'
import { zoneName } from '../roof/names.js'

/** @typedef {(by: string, key: string) => string} Named */

/** @param {any} record @param {any[]} definitions @param {Record<string, string>} crews @returns {Named} */
export function naming(record, definitions, crews) {
  const items = new Map(definitions.flatMap((one) => one.items.map((/** @type {any} */ item) => [`${one.id}/${item.id}`, pick(item.question)])))
  return (by, key) => {
    if (!key) return say(by === 'item' ? 'trends.untold.item' : 'trends.untold')
    if (by === 'item') return items.get(key) ?? key
    if (by === 'area') return record.areas[key]?.name ?? key
    if (by === 'assembly') return record.assemblies[key]?.name ?? key
    if (by === 'severity') return say(`finding.severity.${key}`)
    if (by === 'zone') return zoneName(key)
    return by === 'crew' ? crews[key] ?? key : key
  }
}
