// The pair of pictures of a place: where it is, and what it is. A close-up alone is illustration, not evidence.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Part } from '../frame/screen.js'
import { Problem } from '../frame/problem.js'
import { useDraft } from '../frame/draft.js'
import { enter } from '../frame/enter.js'
import { keepPhoto } from '../photo/keep.js'
import { photoUrl } from '../photo/read.js'
import { photosOf } from './answer.js'

const ROLES = ['where', 'what']

/** @param {{job: string, record: any, walk: any, station: any, person: any, locked: boolean, subject?: string}} props */
export function Pair({ job, record, walk, station, person, locked, subject }) {
  const place = (station ?? walk).id
  const [draft, change] = useDraft(person.id, `photo/${place}`, { waiting: '' })
  const [fault, setFault] = useState(/** @type {any} */ (null))
  if (!draft) return null
  const has = (/** @type {string} */ role) => photosOf(record, walk, station, role).at(-1)
  const take = (/** @type {string} */ role, /** @type {string} */ source) => async (/** @type {any} */ event) => {
    const [file] = event.target.files ?? []
    event.target.value = ''
    if (!file) return
    setFault(null)
    try {
      const { sha256, size, type, width, height } = await keepPhoto(file)
      await enter({ job, kind: 'photo', subject: sha256, replaces: record.photos[sha256]?.heads ?? [],
        body: { walk: walk.id, station: station?.id ?? null, answer: subject ?? null, role, sha256, size, type, source,
          width: width ?? undefined, height: height ?? undefined } })
      await change({ waiting: '' })
    } catch (problem) {
      setFault(problem)
    }
  }
  // Said before the camera opens: phones close the page behind it, and then this brings the person back.
  const opening = (/** @type {string} */ role) => () => { change({ waiting: role }) }
  const input = (/** @type {string} */ role, /** @type {string} */ source) => html`<label class="press tall file" data-name=${`${source}-${role}`}>
    <span class="label">${say(`photo.${source}`)}</span>
    <input type="file" accept="image/*" capture=${source === 'camera' ? 'environment' : undefined} onClick=${opening(role)} onChange=${take(role, source)} /></label>`
  return html`<${Part} name=${say('photo.pair')}>
    ${draft.waiting && !has(draft.waiting) && html`<p class="problem" role="status"><strong>▲ ${say('photo.waiting', { role: say(`photo.${draft.waiting}`) })}</strong></p>`}
    <div class="pair">${ROLES.map((role) => html`<div class="stack" key=${role} data-role=${role}>
      <h3>${say(`photo.${role}`)}</h3>
      <p class="hint">${say(`photo.${role}.how`)}</p>
      ${has(role) && html`<${Picture} sha256=${has(role).sha256} job=${job} name=${say(`photo.${role}`)} />
        <p class="done-bar">✓ ${say('photo.kept')}</p>`}
      ${!locked && input(role, 'camera')}
      ${!locked && input(role, 'picked')}
    </div>`)}</div>
    ${has('what') && !has('where') && html`<p class="hint">${say('photo.illustration')}</p>`}
    <${Problem} fault=${fault} />
  <//>`
}

/** @param {{sha256: string, job: string, name: string}} props */
export function Picture({ sha256, job, name }) {
  const [url, setUrl] = useState('')
  const [fault, setFault] = useState(/** @type {any} */ (null))
  useEffect(() => { photoUrl(sha256, job).then(setUrl, setFault) }, [sha256])
  return fault ? html`<${Problem} fault=${fault} />` : html`<img class="picture" src=${url || undefined} alt=${name} />`
}
