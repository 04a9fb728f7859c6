// The drawing a person is in the middle of, kept at every change, with its steps back and forth.

import { useState } from '../frame/view.js'
import { useDraft } from '../frame/draft.js'
import { uuid7 } from '../entry/uuid7.js'
import { blank, drawingOf } from './body.js'
import { before, did, redone, undone } from './steps.js'
import { numbers, ring } from './outline.js'
import { taut } from './taut.js'

/** @param {{job: string, record: any, person: any, rest: string[]}} props `rest[0]`: an area's id, or `new` */
export function useDrawing({ job, record, person, rest }) {
  const area = record.areas[rest[0]] ?? null
  const [id] = useState(uuid7)
  const key = `draw/${job}/${area?.id ?? 'new'}`
  const [draft, change] = useDraft(person.id, key, area ? drawingOf(record, area) : blank(record, id))
  /** One step: a patch, or what makes one of the drawing as it stands. */
  const make = (/** @type {any} */ patch, /** @type {string} */ tag = '') => change((/** @type {any} */ old) => did(old, typeof patch === 'function' ? patch(old) : patch, tag))
  /** The typed length of edge `i`, '' while it is mistyped, null where it gives way: the outline is pulled to it. */
  const stretch = (/** @type {number} */ i, /** @type {string | null} */ value) => {
    const tag = value === null ? '' : `length/${i}`
    return make((/** @type {any} */ old) => {
      const base = before(old, tag)
      const lengths = old.lengths.map((/** @type {any} */ one, /** @type {number} */ at) => (at === i ? value : one))
      const pulled = value ? taut(numbers(base.points), lengths.map((/** @type {any} */ one) => (one ? Number(one) : null))) : null
      return { lengths, points: pulled ? ring(pulled) : base.points }
    }, tag)
  }
  return { area, key, draft, make, stretch, undo: () => change(undone), redo: () => change(redone), note: change }
}
