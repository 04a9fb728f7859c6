// Straight back to the camera when a picture does not decide: straighter, or closer.

import { html } from '../frame/view.js'
import { useDraft } from '../frame/draft.js'
import { enterPhoto } from './enter_photo.js'
import { PhotoButton } from './photo_button.js'

/** @param {{job: string, record: any, walk: any, station: any, person: any, subject: string}} props */
export function Again({ job, record, walk, station, person, subject }) {
  const key = `photo/${station?.id ?? subject}`
  const [draft, change, drop] = useDraft(person.id, key, { waiting: '' })
  if (!draft) return null
  const keep = (/** @type {File} */ file, /** @type {'camera' | 'picked'} */ source, /** @type {any} */ position) =>
    enterPhoto({ job, record, walk, station, answer: subject, role: 'what', file, source, position, draft: key })
  return html`<${PhotoButton} role="what" again waiting=${draft.waiting === 'what'} keep=${keep}
    wait=${(/** @type {boolean} */ on) => (on ? change({ waiting: 'what' }) : drop())} />`
}
