// Where a person was when they opened a finding by hand: a walk, an area, a panel, or just the job. Pure.

/**
 * @param {any} record @param {string[]} steps `['walk', ID]`, `['area', ID]`, `['panel', AREA, NUMBER]` or none
 * @returns {{walk: string | null, area: string | null, panel: string | null, areas: string[] | null, back: (string | number)[]}} `areas`: those to choose from, null for all
 */
export function from(record, [kind, id, number]) {
  const none = { walk: null, area: null, panel: null, areas: null, back: ['findings'] }
  const walk = kind === 'walk' && record.walks[id]
  if (walk) return { ...none, walk: id, area: walk.areas.length === 1 ? walk.areas[0] : null, areas: walk.areas, back: ['walk', id] }
  if (kind === 'area' && record.areas[id]) return { ...none, area: id, back: ['area', id] }
  if (kind === 'panel' && record.areas[id]) return { ...none, area: id, panel: /^\d+$/.test(number ?? '') ? number : null, back: ['plan', id, ...(number ? [number] : [])] }
  return none
}
