// Bring in a copy that somebody saved on a phone: choose the file, send it part by part, see what became of each thing.

import { html, useRef, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Screen } from '../frame/screen.js'
import { MainAction } from '../frame/main_action.js'
import { size } from '../frame/size.js'
import { partsOf } from '../copy/cut.js'
import { nothingYet, withPart } from '../copy/outcome.js'
import { sendNow } from '../sync/engine.js'
import { Trouble } from '../words/trouble.js'
import { tell } from './asked.js'
import { Brought } from './brought.js'

const SLOWEST = 16 // bytes a ms that a part may take at worst, before it is given up and sent again

/** @param {{job: string, record: any, person: any}} props */
export function Bring({ job, record, person }) {
  const input = useRef(/** @type {any} */ (null))
  const [file, setFile] = useState(/** @type {File | null} */ (null))
  const [outcome, setOutcome] = useState(nothingYet())
  const [at, setAt] = useState(0) // the bytes of the file that the office has answered for
  const choose = (/** @type {any} */ event) => {
    setFile(event.target.files[0] ?? null)
    setOutcome(nothingYet())
    setAt(0)
  }
  const run = async () => {
    if (!file) return
    let known = outcome
    for await (const { from, to, body } of partsOf(file, at)) {
      known = withPart(known, await sent(body), from)
      setOutcome(known)
      setAt(to)
    }
    if (!known.listed && !known.came.size) throw new Trouble('bring.not_a_copy', { field: 'copy', value: file.name })
    sendNow()
  }
  const done = file !== null && at === file.size && (outcome.listed || outcome.came.size > 0)
  const percent = file ? Math.floor((100 * at) / Math.max(1, file.size)) : 0
  return html`<${Screen} title=${say('bring')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name} wide>
    ${person.role !== 'administrator' ? html`<p class="big">${say('bring.by_administrator')}</p>` : html`
      <p>${say('bring.what')}</p>
      <p>${say('bring.jobs')}</p>
      <input ref=${input} class="gone" tabindex="-1" aria-hidden="true" type="file" accept=".tar,application/x-tar" data-name="copy-file" onChange=${choose} />
      <button type="button" class="press" data-name="choose-copy" onClick=${() => input.current?.click()}>${say('bring.choose')}</button>
      ${file && html`<p class="big" data-name="chosen">${say('bring.chosen', { name: file.name, size: size(file.size) })}</p>`}
      <p role="status" data-name="brought-part">${file && at > 0 && !done ? say('bring.part', { percent }) : ''}</p>
      ${done ? html`<${Brought} outcome=${outcome} />`
      : html`<${MainAction} name="bring-copy" label=${say('bring.run')} under=${say('bring.run.under')} disabled=${!file} run=${run} />`}`}
  <//>`
}

/** @param {Blob} body one part @returns {Promise<any>} what became of it @throws {Trouble} `bring.cut`, `office.refused` */
async function sent(body) {
  try {
    return await tell('POST', '/api/copies', body, body.size / SLOWEST)
  } catch (fault) {
    if (fault instanceof Trouble && ['sync.offline', 'sync.not_our_server'].includes(fault.code)) throw new Trouble('bring.cut', { field: 'copy' })
    throw fault
  }
}
