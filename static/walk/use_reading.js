// What an item's rule is asked about: the reading, the picture it is made on, and the metal's temperature then.

import { useMetal } from '../instruments/use_metal.js'
import { inReading, wantsMetal } from '../instruments/metal.js'
import { photosOf } from './pictures.js'
import { useVerdict } from './judging.js'

/**
 * @param {{record: any, person: any, walk: any, station: any, area: any, item: any, subject: string, draft: any, close?: any}} known `close`: the picture taps are made on, where it is
 *   not the newest of the answer
 * @returns {{close: any, metal: any, own: any, whole: any, verdict: any, bare: any, beforehand: any}} `close`: the photo entry taps are made on;
 *   `own` as it was put in, `whole` as it is kept; `bare`: the verdict without the card; `beforehand`: of the window, before anything is read
 */
export function useReading({ record, person, walk, station, area, item, subject, draft, close = walk ? photosOf(record, walk, station, 'what', subject).at(-1) ?? null : null }) {
  const slot = item?.instrument === 'slot_taps'
  const own = forPicture(draft, close?.sha256)
  const metal = useMetal({ record, person, walk, item, answer: record.answers[subject], picture: slot ? close : null, read: own ? draft.read : null })
  const whole = withMetal(item?.kind === 'compute' && draft ? {} : own, item, metal)
  const place = { record, walk, station, area, item }
  const verdict = useVerdict({ ...place, reading: whole })
  const bare = useVerdict({ ...place, reading: whole?.card ? { ...whole, card: undefined } : null })
  const beforehand = useVerdict({ ...place, reading: slot && item.rule ? withMetal({ third: 'middle' }, item, metal) : null })
  return { close, metal, own, whole, verdict, bare, beforehand }
}

/** Taps speak of the picture on which they were made; on another they are none. @param {any} draft @param {string} [picture] sha256 of the newest */
export function forPicture(draft, picture) {
  const reading = draft?.reading ?? null
  return reading?.taps && draft.of !== picture ? null : reading
}

/** @param {any} reading @param {any} item @param {any} metal of `useMetal` @returns {any} null while a temperature that the rule needs is missing */
function withMetal(reading, item, metal) {
  if (!reading || !wantsMetal(item)) return reading
  return metal?.speaks ? { ...reading, ...inReading(metal.speaks) } : null
}
