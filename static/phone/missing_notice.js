// A line where a person looks first: something they recorded on another phone never arrived.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { countMissing, missingOf } from '../sync/missing.js'

/** As last told by the office, read again when it tells anew. @param {string | undefined} person @returns {import('../sync/missing.js').Missing | undefined} */
export function useMissing(person) {
  const [known, setKnown] = useState(/** @type {any} */ (undefined))
  useEffect(() => {
    const read = () => person && missingOf(person).then(setKnown)
    read()
    addEventListener('seamwalk:missing', read)
    return () => removeEventListener('seamwalk:missing', read)
  }, [person])
  return known
}

/** @param {{person: any, always?: boolean}} props `always`: also of what the person has read */
export function MissingNotice({ person, always }) {
  const { all, unread } = countMissing(useMissing(person?.id))
  const n = always ? all : unread
  return n > 0 && html`<a class="press tall" href=${path('missing')} data-name="missing"><span class="label"><strong>${say('missing.told', { n })}</strong>
    <span class="under">${say('missing.under')}</span></span><span class="go" aria-hidden="true">→</span></a>`
}
