// Work that came back from its second copy: said on every screen until somebody has seen it.

import { dropMeta, readMeta } from '../storage/meta.js'
import { say } from '../words/say.js'
import { html, useEffect, useState } from './view.js'

export function PutBackNotice() {
  const [back, setBack] = useState(/** @type {{entries: number, photos: number, gone: number} | null} */ (null))
  useEffect(() => {
    const read = () => readMeta(['put_back']).then((kept) => setBack(kept ?? null), () => {})
    read()
    addEventListener('seamwalk:put_back', read)
    return () => removeEventListener('seamwalk:put_back', read)
  }, [])
  if (!back) return null
  const seen = () => dropMeta(['put_back']).then(() => setBack(null), () => {})
  return html`<div class="problem" role="alert" data-name="put-back">
    <strong><span aria-hidden="true">▲</span> ${say('put_back')}</strong>
    <p>${say('put_back.came', back)}${back.gone > 0 && html` <strong>${say('put_back.gone', { n: back.gone })}</strong>`}</p>
    <p>${say('put_back.way_out')}</p>
    <button type="button" class="press" data-name="put-back-seen" onClick=${seen}>${say('put_back.seen')}</button>
  </div>`
}
