// One picture along an open leg, straight from the camera: the panel's tag in it, a tape lying along the leg.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { useDraft } from '../frame/draft.js'
import { PhotoButton } from '../walk/photo_button.js'
import { enterPhoto } from '../walk/enter_photo.js'
import { areaOf } from './standing.js'

/** @param {{job: string, record: any, person: any, walk: any, lot: any, panel: number, area?: string}} props */
export function LegPhoto({ job, record, person, walk, lot, panel, area = areaOf(lot) }) {
  const key = `leg/${lot.id}/${area}/${panel}`
  const [draft, change, drop] = useDraft(person.id, key, { waiting: '' })
  if (!draft) return null
  const taken = legPhotos(record, lot, area, panel).length
  const keep = (/** @type {File} */ file, /** @type {'camera' | 'picked'} */ source, /** @type {any} */ position) =>
    enterPhoto({ job, record, walk, station: null, role: 'leg', file, source, position, draft: key, leg: { lot: lot.id, area, panel } })
  return html`<div class="stack" data-role="leg" data-panel=${panel}>
    <h3>${say('leg.panel', { panel })}</h3>
    <p class="hint">${say('leg.how')}</p>
    ${taken > 0 && html`<p class="done-bar">✓ ${say('photo.kept')}</p>`}
    <${PhotoButton} role="leg" waiting=${draft.waiting === 'leg'} keep=${keep} wait=${(/** @type {boolean} */ on) => (on ? change({ waiting: 'leg' }) : drop())} />
  </div>`
}

/** @param {any} record @param {any} lot @param {string} area @param {number} panel @returns {any[]} */
export function legPhotos(record, lot, area, panel) {
  return Object.values(record.photos).filter((/** @type {any} */ photo) => photo.role === 'leg' && photo.lot === lot.id && photo.area === area && photo.panel === panel)
}
