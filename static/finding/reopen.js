// What was closed or accepted is open again: an entry of its own, which names what no longer holds.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { enterCounted } from '../frame/enter.js'
import { useDraft } from '../frame/draft.js'
import { uuid7 } from '../entry/uuid7.js'
import { Part, Screen } from '../frame/screen.js'
import { TextField } from '../frame/text_field.js'
import { MainAction } from '../frame/main_action.js'
import { NotOffered, useOffer } from './offer.js'
import { standing } from './offers.js'
import { firstPicture } from './pictures.js'
import { NO_SHOTS, ShotsAgain } from './shots.js'
import { title, where } from './told.js'

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props */
export function Reopen({ job, record, definitions, person, rest }) {
  const finding = record.findings[rest[0]]
  const of = standing(finding)
  const key = `reopening/${job}/${finding.id}`
  const [draft, change] = useDraft(person.id, key, { id: uuid7(), reason: '', ...NO_SHOTS })
  const offer = useOffer(finding, person, 'reopening')
  if (!draft || !offer) return null
  const frame = { title: say('reopen'), over: title(definitions, finding), back: path('job', job, 'finding', finding.id), backTo: say('finding') }
  if (!offer.offered) return html`<${Screen} ...${frame}><${NotOffered} ...${{ offer, finding }} /><//>`
  const run = async () => {
    await enterCounted({ job, kind: 'reopening', subject: draft.id, draft: key, body: { finding: finding.id, of, reason: draft.reason.trim(), photos: draft.photos, name: person.name, role: person.role } })
    go('job', job, 'finding', finding.id)
  }
  const ready = of.length > 0 && draft.reason.trim()
  return html`<${Screen} ...${frame}>
    <p class="big">${where(record, finding)}</p>
    <p>${say(of.length ? 'reopen.what' : 'reopen.nothing')}</p>
    <${TextField} name="reason" lines=${3} label=${say('reopen.reason')} value=${draft.reason} onChange=${(/** @type {string} */ reason) => change({ reason })} />
    <${Part} name=${say('finding.picture')}><${ShotsAgain} ...${{ job, draft, change }} first=${finding.corrections.at(-1)?.photos.at(-1) ?? firstPicture(finding)} /><//>
    <${MainAction} name="keep-reopening" label=${say('reopen.keep')} under=${ready ? '' : say(of.length ? 'reopen.needs_reason' : 'reopen.nothing')} disabled=${!ready} run=${run} />
  <//>`
}
