// The phone's storage does not take what is written: said on every screen until it does, with the way out.

import { html, useEffect, useState } from './view.js'
import { say } from '../words/say.js'
import { storageTrouble } from '../storage/standing.js'
import { Twice } from './twice.js'

export function StorageNotice() {
  const [reason, setReason] = useState(storageTrouble())
  useEffect(() => {
    const read = () => setReason(storageTrouble())
    addEventListener('seamwalk:storage', read)
    return () => removeEventListener('seamwalk:storage', read)
  }, [])
  if (!reason) return null
  return html`<div class="problem" role="alert" data-name="storage-notice" data-reason=${reason}>
    <strong><span aria-hidden="true">▲</span> ${say(reason, { field: say('field.text') })}</strong>
    ${reason !== 'storage.torn' && html`<p>${say('storage_notice.still_here')}</p>`}
    ${reason !== 'outbox.storage_stopped' ? html`<p>${say(`${reason}.way_out`)}</p>`
      : html`<${Twice} name="load-anew" label=${say('storage_notice.reload')} ask=${say('storage_notice.reload.ask')} run=${() => location.reload()} />`}
  </div>`
}
