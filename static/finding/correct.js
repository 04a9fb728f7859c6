// What was put right, in a few presses: what was done, the same view once more, a reading where there was one.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { enterCounted } from '../frame/enter.js'
import { useDraft } from '../frame/draft.js'
import { uuid7 } from '../entry/uuid7.js'
import { Part, Screen } from '../frame/screen.js'
import { Choice } from '../frame/choice.js'
import { TextField } from '../frame/text_field.js'
import { MainAction } from '../frame/main_action.js'
import { Care } from '../day/care.js'
import { dropDraft } from '../storage/drafts.js'
import { correctionKey } from './drafts.js'
import { NotOffered, useOffer } from './offer.js'
import { firstPicture } from './pictures.js'
import { NO_READING, Reading, ownMetal, useMeasured, walkId } from './reading.js'
import { NO_SHOTS, ShotsAgain } from './shots.js'
import { Weight } from './states.js'
import { askedBy, title, where } from './told.js'

const DONE = ['moved', 'added', 'replaced', 'fastened_again', 'seamed_again', 'sealed', 'cleaned', 'other']

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props */
export function Correct({ job, record, definitions, person, rest }) {
  const finding = record.findings[rest[0]]
  const { item } = askedBy(definitions, finding)
  const key = correctionKey(job, finding.id)
  const [draft, change] = useDraft(person.id, key, { id: uuid7(), did: [], done: '', ...NO_SHOTS, ...NO_READING })
  const measured = useMeasured({ record, person, finding, item, draft })
  const offer = useOffer(finding, person, 'correction')
  if (!draft || !offer) return null
  const frame = { title: say('correct'), over: title(definitions, finding), back: path('job', job, 'finding', finding.id), backTo: say('finding') }
  if (!offer.offered) return html`<${Screen} ...${frame}><${NotOffered} ...${{ offer, finding }} /><//>`
  const done = [...draft.did.filter((/** @type {string} */ one) => one !== 'other').map((/** @type {string} */ one) => say(`correct.did.${one}`)), draft.done.trim()].filter(Boolean).join('; ')
  const shown = draft.photos.length > 0 || measured.record.verdict?.result === 'pass'
  const toggle = (/** @type {string} */ one) => change((/** @type {any} */ now) => ({ did: now.did.includes(one) ? now.did.filter((/** @type {string} */ all) => all !== one) : [...now.did, one] }))
  const run = async () => {
    await enterCounted({ job, kind: 'correction', subject: draft.id, draft: key, body: { finding: finding.id, walk: walkId(record, measured.walk), done, photos: draft.photos,
      ...measured.record, name: person.name, role: person.role } })
    const metal = ownMetal(record, measured.walk)
    if (metal) await dropDraft(person.id, metal)
    go('job', job, 'finding', finding.id)
  }
  return html`<${Screen} ...${frame}>
    <p class="big">${where(record, finding)}</p>
    <p><${Weight} severity=${finding.severity} /></p>
    <${Choice} many name="did" label=${say('correct.did')} value=${draft.did} onChange=${toggle} options=${DONE.map((one) => ({ value: one, label: say(`correct.did.${one}`) }))} />
    <${TextField} name="done" lines=${2} label=${say('correct.done')} hint=${say('correct.done.hint')} value=${draft.done} onChange=${(/** @type {string} */ text) => change({ done: text })} />
    <${Part} name=${say('correct.picture')}><${ShotsAgain} ...${{ job, draft, change }} first=${firstPicture(finding)} /><//>
    <${Reading} ...${{ job, record, item, measured, change }} />
    ${!shown && html`<p class="problem" data-name="no-evidence"><strong>▲ ${say(finding.severity === 'critical' || !finding.severity ? 'correct.critical_needs' : 'correct.bare')}</strong></p>`}
    <${Care} />
    <${MainAction} name="keep-correction" label=${say('correct.keep')} under=${done ? say('correct.keep.under') : say('correct.needs_done')} disabled=${!done} run=${run} />
  <//>`
}
