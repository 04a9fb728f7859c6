// Every change of a drawing can be taken back and done again, also after the app was closed: the steps are in the draft.

const MOST = 40
const NOT_DRAWN = ['past', 'future', 'tag', 'id', 'heads']

/** What of a draft is the drawing. @param {any} draft */
function content(draft) {
  return Object.fromEntries(Object.entries(draft).filter(([name]) => !NOT_DRAWN.includes(name)))
}

/**
 * The draft with one more change. Changes under one `tag`, such as the digits of one number, are one step.
 * @param {any} draft @param {any} patch @param {string} [tag]
 */
export function did(draft, patch, tag = '') {
  const past = tag && tag === draft.tag ? draft.past : [...draft.past, content(draft)].slice(-MOST)
  return { ...patch, past, future: [], tag }
}

/** The draft as it was before the run of changes under `tag`. @param {any} draft @param {string} tag */
export function before(draft, tag) {
  return tag === draft.tag && draft.past.length ? draft.past.at(-1) : draft
}

/** @param {any} draft @returns {any} a patch */
export function undone(draft) {
  if (!draft.past.length) return {}
  return { ...draft.past.at(-1), past: draft.past.slice(0, -1), future: [content(draft), ...draft.future], tag: '' }
}

/** @param {any} draft @returns {any} a patch */
export function redone(draft) {
  if (!draft.future.length) return {}
  return { ...draft.future[0], past: [...draft.past, content(draft)], future: draft.future.slice(1), tag: '' }
}
