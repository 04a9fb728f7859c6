// One answer to one item, as an entry, with the item's severity: a lot is decided severity by severity. A later answer
// to the same item names the ones it replaces.

import { enter } from '../frame/enter.js'
import { answerId } from './sort_items.js'

/**
 * @param {{job: string, record: any, walk: any, station: any | null, definition: any, item: any, choice: string | null,
 *   area?: string, reading?: any, note?: string, photos?: string[], verdict: any, draft?: string}} what
 */
export function enterAnswer({ job, record, walk, station, area, definition, item, choice, reading = null, note = '', photos = [], verdict, draft }) {
  const subject = answerId((station ?? walk).id, definition, item)
  return enter({
    job, kind: 'answer', subject, replaces: record.answers[subject]?.heads ?? [], draft,
    body: { walk: walk.id, station: station?.id ?? null, area: station?.area ?? area ?? null, definition: definition.digest, item: item.id,
      severity: item.severity, choice, reading, note: note.trim(), photos, verdict },
  })
}
