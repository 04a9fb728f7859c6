// The document that a decision rests on, photographed: kept at once, named by the entry, sent with it.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { keepPhoto } from '../photo/keep.js'
import { Picture } from './pair.js'
import { PhotoButton } from './photo_button.js'

/** @param {{job: string, sha256: string | null, waiting: boolean, change: (patch: any) => Promise<any>}} props */
export function DocumentPhoto({ job, sha256, waiting, change }) {
  const keep = async (/** @type {File} */ file) => { await change({ document: (await keepPhoto(file)).sha256, waiting: false }) }
  return html`<div class="stack" data-role="document">
    <h3>${say('photo.document')}</h3>
    ${sha256 && html`<${Picture} ...${{ job, sha256 }} name=${say('photo.document')} /><p class="done-bar">✓ ${say('photo.kept')}</p>`}
    <${PhotoButton} role="document" waiting=${waiting} wait=${(/** @type {boolean} */ on) => change({ waiting: on })} keep=${keep} />
  </div>`
}
