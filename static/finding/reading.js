// A reading of what was put right, with the item's own instrument, judged like an answer.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Part } from '../frame/screen.js'
import { Instrument } from '../instruments/instrument.js'
import { MetalNow } from '../instruments/metal_now.js'
import { metalKey } from '../instruments/use_metal.js'
import { build } from '../server/build.js'
import { useReading } from '../walk/use_reading.js'
import { computed } from '../walk/verdict.js'
import { Working } from '../walk/working.js'

export const NO_READING = { reading: null, read: 0, of: '' }

/** @typedef {{walk: any, area: any, close: any, metal: any, own: any, whole: any, verdict: any, bare: any, beforehand: any, record: {reading: any, verdict: any}}} Measured */

/**
 * @param {{record: any, person: any, finding: any, item: any, draft: any}} known `draft` with `photos`, `taken` and what NO_READING has
 * @returns {Measured} `record`: both members as an entry carries them, null while there is no reading
 */
export function useMeasured({ record, person, finding, item, draft }) {
  const [digest, setDigest] = useState('')
  useEffect(() => { build().then(setDigest) }, [])
  const walk = walkNow(record, person, finding)
  const station = record.stations[finding.station] ?? null
  const area = record.areas[finding.area ?? station?.area] ?? null
  const newest = draft?.photos.at(-1)
  const close = newest ? { sha256: newest, at: draft.taken } : null // the taps are made on the new picture, never on the first
  const found = useReading({ record, person, walk, station, area, item, subject: '', draft, close })
  const kept = item?.instrument && found.verdict
  return { ...found, walk, area, record: kept ? { reading: found.whole, verdict: computed(found.verdict, digest) } : { reading: null, verdict: null } }
}

/** Where the metal's temperature of this moment is kept: the person's open walk there, or the finding itself. @param {any} record @param {any} person @param {any} finding */
function walkNow(record, person, finding) {
  const open = Object.values(record.walks).find((/** @type {any} */ one) => !one.signoff && one.by === person.id && one.areas.includes(finding.area))
  return open ?? { id: `finding/${finding.id}`, by: person.id, signoff: null }
}

/** The id of the walk as an entry names it, or null. @param {any} record @param {any} walk @returns {string | null} */
export function walkId(record, walk) {
  return record.walks[walk.id] ? walk.id : null
}

/** The row of a temperature that no walk will drop. @param {any} record @param {any} walk @returns {string | null} */
export function ownMetal(record, walk) {
  return record.walks[walk.id] ? null : metalKey(walk.id)
}

/** @param {{job: string, record: any, item: any, measured: Measured, change: (patch: any) => Promise<any>}} props */
export function Reading({ job, record, item, measured, change }) {
  if (!item?.instrument) return null
  const { close, metal, own, verdict, bare, beforehand, area } = measured
  const put = (/** @type {any} */ reading) => change({ reading, read: Date.now(), of: close?.sha256 ?? '' })
  return html`<${MetalNow} ...${{ record, metal, forget: () => put(null) }} />
    <${Part} name=${say('item.reading')}>
      <${Instrument} ...${{ item, record, area, picture: close?.sha256 ?? '', job, value: own, verdict, bare, beforehand, onChange: put, retake: null }} />
      ${verdict && html`<${Working} answer=${verdict} />`}
      ${verdict?.verdict === 'fail' && html`<p class="problem"><strong>▲ ${say('correct.reading_fails')}</strong></p>`}
    <//>`
}
