// Pictures of a finding: those it was opened with, and those of what was done since.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { photoUrl } from '../photo/read.js'
import { Picture } from '../walk/pair.js'

/** @param {{job: string, photos: string[], name: string}} props */
export function Pictures({ job, photos, name }) {
  if (!photos?.length) return null
  return html`<div class="pair">${photos.map((sha256, n) => html`<figure key=${sha256}><${Picture} ...${{ sha256, job }} name=${photos.length > 1 ? say('finding.picture.of', { name, n: n + 1, of: photos.length }) : name} /></figure>`)}</div>`
}

/** A picture in a list: where it cannot be had, a word in its place and no alarm. @param {{job: string, sha256: string, name: string}} props */
export function Small({ job, sha256, name }) {
  const [url, setUrl] = useState(/** @type {string | null} */ (''))
  const show = () => { photoUrl(sha256, job).then(setUrl, () => setUrl(null)) }
  useEffect(show, [sha256])
  useEffect(() => {
    if (url !== null) return
    addEventListener('seamwalk:sync', show) // with signal, or brought along meanwhile, it shows itself
    return () => removeEventListener('seamwalk:sync', show)
  }, [url])
  return url === null ? html`<p class="hint task-picture">${say('tomorrow.picture_elsewhere')}</p>` : html`<img class="picture task-picture" src=${url || undefined} alt=${name} />`
}

/** The picture that shows the thing itself: the last a place was photographed with. @param {any} finding @returns {string | null} */
export function firstPicture(finding) {
  return finding.photos?.at(-1) ?? null
}
