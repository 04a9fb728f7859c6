// Which part of the roof a firm sees, in words.

import { say } from '../words/say.js'

/** @param {any} record @param {string[] | null} areas ids; null: the whole job */
export function areaNames(record, areas) {
  if (areas === null) return say('sees.whole')
  if (areas.length === 0) return say('sees.nothing')
  const names = areas.map((id) => record.areas[id]?.name ?? say('sees.unknown_area'))
  return say('sees.areas', { n: areas.length, areas: names.sort().join(', ') })
}
