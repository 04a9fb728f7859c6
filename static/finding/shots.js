// Pictures taken for an entry that is not signed yet: kept on the phone at once, named by the entry, sent with it.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { keepPhoto } from '../photo/keep.js'
import { Picture } from '../walk/pair.js'
import { PhotoButton } from '../walk/photo_button.js'
import { SameView } from './same_view.js'

/** What a draft holds of them. */
export const NO_SHOTS = { photos: /** @type {string[]} */ ([]), taken: '', waiting: '' }

/** A picture kept, as a change of the draft. @param {(patch: any) => Promise<any>} change @returns {(file: File) => Promise<void>} */
function keeping(change) {
  return async (file) => {
    const { sha256 } = await keepPhoto(file)
    await change((/** @type {any} */ now) => ({ photos: [...now.photos.filter((/** @type {string} */ one) => one !== sha256), sha256], taken: new Date().toISOString(), waiting: '' }))
  }
}

/** Taken so far, each with a way to leave it out. @param {{job: string, photos: string[], change: (patch: any) => Promise<any>}} props */
function Taken({ job, photos, change }) {
  return photos.map((sha256, n) => html`<figure key=${sha256} class="stack" data-name="shot"><${Picture} ...${{ job, sha256 }} name=${say('shots.taken', { n: n + 1 })} />
    <p class="done-bar">✓ ${say('photo.kept')}</p>
    <button type="button" class="press" data-name="leave-out" onClick=${() => change({ photos: photos.filter((one) => one !== sha256) })}>${say('shots.leave_out')}</button></figure>`)
}

/** Pictures of a view that was photographed before. @param {{job: string, first: string | null, draft: any, change: (patch: any) => Promise<any>}} props */
export function ShotsAgain({ job, first, draft, change }) {
  const none = draft.photos.length === 0
  // One element whether or not there is a picture already: the button that took it goes on living in it.
  return html`<div class="stack" data-role="after"><${Taken} ...${{ job, photos: draft.photos, change }} />
    <details class=${none ? 'bare' : ''} open=${none}><summary class="press" data-name="another">${say('shots.another')}</summary>
      <${SameView} ...${{ job, first }} waiting=${draft.waiting === 'after'} wait=${(/** @type {boolean} */ on) => change({ waiting: on ? 'after' : '' })} keep=${keeping(change)} /></details></div>`
}

/** Pictures of what nobody photographed before. @param {{job: string, draft: any, change: (patch: any) => Promise<any>, role?: string}} props */
export function Shots({ job, draft, change, role = 'what' }) {
  return html`<div class="stack" data-role=${role}><${Taken} ...${{ job, photos: draft.photos, change }} />
    <p class="hint">${say('gate.step_back')}</p>
    <${PhotoButton} role=${role} waiting=${draft.waiting === role} wait=${(/** @type {boolean} */ on) => change({ waiting: on ? role : '' })} keep=${keeping(change)} /></div>`
}
