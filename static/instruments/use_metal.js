// The metal's temperature as this phone keeps it for a walk: shared by all its items, and asked again in time.

import { useEffect, useState } from '../frame/view.js'
import { useDraft } from '../frame/draft.js'
import { unitOf } from '../frame/amount.js'
import { HOLDS, allTaken, due, ofAnswer, ofWalk, speaking, wantsMetal } from './metal.js'

const TICK = 15_000 // ms: how late a screen left open may notice that ten minutes are over

/** The key of the row; who closes the walk drops it. @param {string} walk */
export function metalKey(walk) {
  return `metal/${walk}`
}

/**
 * @param {{record: any, person: any, walk: any, item: any, answer: any, picture: any, read: number | null}} props `picture`: the photo entry
 *   on which the reading is made, or null; `read`: when a reading without one was made, null while there is none
 * @returns {any} null where the item asks for none; else `{speaks, again, late, picture, take, turn}`
 */
export function useMetal({ record, person, walk, item, answer, picture, read }) {
  const wanted = wantsMetal(item) && Boolean(walk) && !walk.signoff && walk.by === person.id
  const [kept, change] = useDraft(person.id, metalKey(walk?.id ?? ''), wanted ? { first: ofWalk(walk), taken: [], changed: [] } : null)
  const [now, setNow] = useState(Date.now())
  useEffect(() => {
    if (!wanted) return
    const timer = setInterval(() => setNow(Date.now()), TICK)
    return () => clearInterval(timer)
  }, [wanted])
  const seen = Boolean(kept)
  useEffect(() => { if (seen) change({}) }, [seen]) // so that a corrected walk is known from what it said before
  if (!wanted || !kept) return null
  // Without a picture a reading is of the moment it was made, or of a later change of sun or shade: the roof is still there to look at.
  const moment = picture ? Date.parse(picture.at) : Math.max(read ?? Math.max(now, ...kept.taken.map((/** @type {any} */ one) => one.at)), ...kept.changed)
  const earlier = picture && ofAnswer(answer, picture.sha256, moment)
  const speaks = speaking([...allTaken(walk, kept), ...(earlier ? [earlier] : [])], kept.changed, moment)
  const take = (/** @type {string} */ value, /** @type {string} */ by) => {
    const uncertainty = record.job.instruments[by].uncertainty
    return change((/** @type {any} */ old) => ({ taken: [...old.taken, { value, unit: unitOf(record.job, 'heat'), uncertainty, by, at: Date.now() }] }))
  }
  const turn = () => change((/** @type {any} */ old) => ({ changed: [...old.changed, Date.now()] }))
  const late = Date.now() - moment > 1000 * HOLDS // no temperature taken from now on can speak for it
  return { speaks, again: due(speaks), late, picture, take, turn }
}
