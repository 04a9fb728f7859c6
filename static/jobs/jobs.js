// The jobs this person belongs to, as this phone knows them.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { jobs } from '../record/load.js'
import { sendNow } from '../sync/engine.js'
import { path } from '../frame/route.js'
import { Screen } from '../frame/screen.js'
import { MainAction } from '../frame/main_action.js'
import { MissingNotice } from '../phone/missing_notice.js'
import { useSyncStatus } from '../phone/sync_status.js'

/** @param {{person: any, tell: (invented: boolean) => void}} props */
export function Jobs({ person, tell }) {
  const [found, setFound] = useState(/** @type {any} */ (null))
  const sync = useSyncStatus()
  useEffect(() => {
    let turn = 0
    const read = async () => {
      const mine = ++turn
      const known = await jobs()
      if (mine === turn) setFound(known) // an older look never covers a newer one
    }
    read()
    tell(false)
    addEventListener('seamwalk:sync', read)
    return () => {
      turn = Infinity
      removeEventListener('seamwalk:sync', read)
    }
  }, [])
  return html`<${Screen} title=${say('jobs')} over="Seamwalk">
    <${MissingNotice} person=${person} />
    ${found?.length === 0 && html`<p class="big">${say('jobs.none')}</p>
      <${MainAction} label=${say('jobs.fetch')} under=${sync} run=${sendNow} />`}
    <ul class="rows">
      ${(found ?? []).map((/** @type {any} */ job) => html`<li key=${job.id}>
        <a class="press tall" href=${path('job', job.id)} data-name="job"><span class="label">${job.name}
          ${job.place && html`<span class="under">${job.place}</span>`}
          ${job.overdue > 0 && html`<span class="under" data-name="overdue"><strong>${say('overdue', { n: job.overdue })}</strong></span>`}</span><span class="go" aria-hidden="true">→</span></a>
      </li>`)}
    </ul>
  <//>`
}
