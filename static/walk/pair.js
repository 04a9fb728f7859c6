// The pair of pictures of a place: where it is, and what it is. A close-up alone is illustration, not evidence.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Part } from '../frame/screen.js'
import { Problem } from '../frame/problem.js'
import { useDraft } from '../frame/draft.js'
import { photoUrl } from '../photo/read.js'
import { Trouble } from '../words/trouble.js'
import { photosOf } from './pictures.js'
import { enterPhoto } from './enter_photo.js'
import { PhotoButton } from './photo_button.js'

const ROLES = ['where', 'what']

/** @param {{job: string, record: any, walk: any, station: any, person: any, locked: boolean, subject?: string}} props */
export function Pair({ job, record, walk, station, person, locked, subject }) {
  const key = `photo/${station?.id ?? subject ?? walk.id}`
  const [draft, change, drop] = useDraft(person.id, key, { waiting: '' })
  if (!draft) return null
  const has = (/** @type {string} */ role) => photosOf(record, walk, station, role, subject).at(-1)
  const keep = (/** @type {string} */ role) => (/** @type {File} */ file, /** @type {'camera' | 'picked'} */ source, /** @type {any} */ position) =>
    enterPhoto({ job, record, walk, station, answer: subject, role, file, source, position, draft: key })
  return html`<${Part} name=${say('photo.pair')}>
    <div class="pair">${ROLES.map((role) => html`<div class="stack" key=${role} data-role=${role}>
      <h3>${say(`photo.${role}`)}</h3>
      <p class="hint">${say(`photo.${role}.how`)}</p>
      ${has(role) && html`<${Picture} sha256=${has(role).sha256} job=${job} name=${say(`photo.${role}`)} />
        <p class="done-bar">✓ ${say('photo.kept')}</p>`}
      ${!locked && html`<${PhotoButton} role=${role} waiting=${draft.waiting === role}
        wait=${(/** @type {boolean} */ on) => (on ? change({ waiting: role }) : drop())} keep=${keep(role)} />`}
    </div>`)}</div>
    ${has('what') && !has('where') && html`<p class="problem"><strong>▲ ${say('photo.illustration')}</strong></p>`}
  <//>`
}

/** @param {{sha256: string, job: string, name: string}} props */
export function Picture({ sha256, job, name }) {
  const [url, setUrl] = useState('')
  const [fault, setFault] = useState(/** @type {any} */ (null))
  const show = () => photoUrl(sha256, job).then((/** @type {string} */ here) => { setUrl(here); setFault(null) }, (/** @type {any} */ why) => setFault(named(why, sha256)))
  useEffect(() => { show() }, [sha256])
  useEffect(() => {
    if (fault?.code !== ELSEWHERE) return
    addEventListener('seamwalk:sync', show) // with signal, or brought along meanwhile, it shows itself
    return () => removeEventListener('seamwalk:sync', show)
  }, [fault])
  return fault ? html`<${Problem} fault=${fault} />` : html`<img class="picture" src=${url || undefined} alt=${name} />`
}

const ELSEWHERE = 'outbox.photo_elsewhere'

/** Without signal what matters of a picture is that it is not on this phone. @param {any} fault @param {string} sha256 */
function named(fault, sha256) {
  return ['sync.offline', 'sync.not_our_server'].includes(fault?.code) ? new Trouble(ELSEWHERE, { field: 'photo', value: sha256 }) : fault
}
