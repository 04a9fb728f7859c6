// What is asked at a place of an audit. On panels that are covered only the seam, its ends and the face can be seen:
// asked there is what one look at the drawn place answers, the same for every panel.

const SEEN = /** @type {Record<string, string[]>} */ ({
  'seams-and-panel-ends': ['snap_closed', 'fold_stage', 'clip_bulge', 'head_marks', 'surface'],
  'audit-walk': ['pinned_signs'],
})

/** @param {any[]} definitions compiled @param {'seen' | 'open'} asks @returns {any[]} for the draw */
export function askedOf(definitions, asks) {
  if (asks === 'open') return definitions
  return definitions.filter(({ id }) => SEEN[id]).map((one) => ({ ...one, per: 'station', items: one.items.filter((/** @type {any} */ item) => SEEN[one.id].includes(item.id)) }))
}
