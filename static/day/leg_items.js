// What is asked of a held leg, in the walk of its own look: what one walk said of an earlier leg is not said of this one.

import { DAY_WATCH } from '../checklist/applies.js'
import { walkToday } from './walk_today.js'

const ASKED = /** @type {Record<string, (id: string) => boolean>} */ ({ first: (id) => id !== 'after_change', change: (id) => id !== 'slide_and_lift' })

/** The checklist with only the items asked at such a hold; null where the job pins none. @param {any[]} definitions @param {string} why */
export function sheetOf(definitions, why) {
  const own = definitions.find((one) => one.id === DAY_WATCH)
  return own && ASKED[why] ? { ...own, items: own.items.filter((/** @type {any} */ item) => ASKED[why](item.id)) } : null
}

/**
 * Today's walk for this hold: none where its answers spoke for another leg that was released since.
 * @param {any} record @param {any[]} definitions @param {any} person @param {any} lot @param {number} panel @param {string} why
 */
export function walkForHold(record, definitions, person, lot, panel, why) {
  const walk = walkToday(record, definitions, person, DAY_WATCH)
  const spoke = walk && Object.values(record.releases ?? {}).some((/** @type {any} */ one) =>
    one.walk === walk.id && ['first', 'change'].includes(one.why) && (one.lot !== lot.id || one.panel !== panel || one.why !== why))
  return spoke && why !== 'failed' ? null : walk
}
