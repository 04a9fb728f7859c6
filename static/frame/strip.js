// At all times: what is only on this phone, how old the oldest is, ready for no signal or not, who, invented or not.

import { html, useEffect, useState } from './view.js'
import { say } from '../words/say.js'
import { counts } from '../outbox/counts.js'
import { missingPictures } from '../shell/own_pictures.js'
import { readiness } from '../shell/ready.js'
import { storageTrouble } from '../storage/standing.js'
import { age } from './age.js'
import { Overdue } from './overdue.js'
import { path } from './route.js'
import { StorageNotice } from './storage_notice.js'

const CHANGES = ['seamwalk:kept', 'seamwalk:sync', 'seamwalk:storage']

/** Nothing can be recorded while the storage takes nothing, signal or not. @param {any} ready */
function withStorage(ready) {
  const trouble = storageTrouble()
  return trouble ? { ...ready, ready: false, reason: trouble, facts: { field: say('field.text') } } : ready
}

/** @returns {any} what `counts()` gives, and `ready`; null until counted */
export function useStanding() {
  const [standing, setStanding] = useState(/** @type {any} */ (null))
  useEffect(() => {
    let tick = 1
    let prepared = false
    const read = async () => {
      const waiting = await counts()
      const ready = withStorage(await readiness())
      prepared = ready.ready
      setStanding((/** @type {any} */ old) => ({ ...waiting, ready: { ...ready, pictures: old?.ready.pictures ?? 0 } })) // counting pictures reads the record, and holds up nothing
      const pictures = await missingPictures()
      setStanding((/** @type {any} */ now) => now && { ...now, ready: { ...now.ready, pictures } })
    }
    const again = () => { read().catch(() => setStanding(null)) }
    again()
    // Soon while it is not ready yet, so that nobody climbs up on an old word; seldom after.
    const every = setInterval(() => { if (tick++ % 5 === 0 || !prepared) again() }, 2_000)
    for (const name of CHANGES) addEventListener(name, again)
    return () => {
      clearInterval(every)
      for (const name of CHANGES) removeEventListener(name, again)
    }
  }, [])
  return standing
}

/** @param {{person: any, invented: boolean}} props */
export function Strip({ person, invented }) {
  const standing = useStanding()
  return html`<div class="strip" role="region" aria-label=${say('strip.region')}>
    ${invented && html`<p class="invented">${say('invented.data')}<span class="more">${say('invented.more')}</span></p>`}
    <a class="standing" href=${path(person ? 'phone' : 'who')} data-name="standing">
      <span class="line"><strong>${person ? html`${waitingWords(standing)}<span class="more">${oldestWords(standing)}</span><span class="less">${oldestShort(standing)}</span>` : say('strip.nobody')}</strong></span>
      <span class="line">${person ? `${readyWords(standing)}${picturesWords(standing)} · ${person.name}` : standing?.others ? '▲ ' + say('strip.waiting', { n: standing.others }) : ''}</span>
      <${Overdue} standing=${standing} />
    </a>
    <${StorageNotice} />
  </div>`
}

/** @param {any} standing */
export function waitingWords(standing) {
  if (!standing) return say('strip.counting')
  const n = standing.entries + standing.photos
  if (n === 0) return '✓ ' + say('strip.all_sent')
  return '▲ ' + say('strip.waiting', { n })
}

/** @param {any} standing how old the oldest of it is; nothing where nothing waits */
export function oldestWords(standing) {
  return standing && standing.entries + standing.photos > 0 ? say('strip.oldest', { age: age(standing.oldest) }) : ''
}

/** @param {any} standing its age alone, where there is room for no more */
function oldestShort(standing) {
  return standing && standing.entries + standing.photos > 0 ? ` · ${age(standing.oldest)}` : ''
}

/** @param {any} standing how many pictures of the person's lists are still to come; nothing where none is */
function picturesWords(standing) {
  const n = standing?.ready.pictures ?? 0
  return n ? `, ${say('strip.pictures', { n })}` : ''
}

/** @param {any} standing */
export function readyWords(standing) {
  if (!standing) return ''
  return standing.ready.ready ? '✓ ' + say('strip.ready') : '▲ ' + say('strip.not_ready')
}
