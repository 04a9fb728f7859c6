// Photographs that the day's record names: kept on the phone at once, sent with the record.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { keepPhoto } from '../photo/keep.js'
import { Picture } from '../walk/pair.js'
import { PhotoButton } from '../walk/photo_button.js'

/** @param {{job: string, photos: string[], waiting: boolean, wait: (on: boolean) => any, change: (photos: string[]) => any, role?: 'label' | 'day'}} props */
export function Labels({ job, photos, waiting, wait, change, role = 'label' }) {
  const keep = async (/** @type {File} */ file) => {
    const { sha256 } = await keepPhoto(file)
    await change([...photos.filter((one) => one !== sha256), sha256])
  }
  const name = (/** @type {number} */ n) => say(`day_record.photo.${role}`, { n: n + 1 })
  return html`<div class="stack" data-role=${role}>
    <p class="hint">${say(`day_record.photo.${role}.hint`)}</p>
    ${photos.map((sha256, n) => html`<figure key=${sha256} class="stack"><${Picture} ...${{ job, sha256 }} name=${name(n)} /><p class="done-bar">✓ ${say('photo.kept')}</p>
      <button type="button" class="press" data-name="photo-out" onClick=${() => change(photos.filter((one) => one !== sha256))}>${say('day_record.remove', { what: name(n) })}</button></figure>`)}
    <${PhotoButton} role=${role} waiting=${waiting} wait=${wait} keep=${keep} />
  </div>`
}
