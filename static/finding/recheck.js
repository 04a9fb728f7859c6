// The second look, by somebody else: what was wrong beside what was put right, and the word that closes it or sends it back.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { clock } from '../frame/age.js'
import { usePeople } from '../frame/people.js'
import { signed } from '../frame/signer.js'
import { enterCounted } from '../frame/enter.js'
import { useDraft } from '../frame/draft.js'
import { uuid7 } from '../entry/uuid7.js'
import { Part, Screen } from '../frame/screen.js'
import { TextField } from '../frame/text_field.js'
import { MainAction } from '../frame/main_action.js'
import { Care } from '../day/care.js'
import { dropDraft } from '../storage/drafts.js'
import { Against, Judged } from './against.js'
import { NotOffered, useOffer } from './offer.js'
import { forRecheck } from './offers.js'
import { Pictures, firstPicture } from './pictures.js'
import { NO_READING, Reading, ownMetal, useMeasured, walkId } from './reading.js'
import { NO_SHOTS, ShotsAgain } from './shots.js'
import { Weight } from './states.js'
import { askedBy, title, where } from './told.js'

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props */
export function Recheck({ job, record, definitions, person, rest }) {
  const finding = record.findings[rest[0]]
  const correction = forRecheck(finding, person)
  const offer = useOffer(finding, person, 'recheck')
  const people = usePeople(job)
  const frame = { title: say('recheck'), over: title(definitions, finding), back: path('job', job, 'finding', finding.id), backTo: say('finding') }
  if (!offer) return null
  if (!offer.offered || !correction) return html`<${Screen} ...${frame}><${NotOffered} ...${{ offer, finding }} /><//>`
  return html`<${Screen} ...${frame}>
    <p class="big">${where(record, finding)}</p>
    <p><${Weight} severity=${finding.severity} /></p>
    <${Part} name=${say('finding.against')}><${Against} ...${{ definitions, finding }} /><${Pictures} ...${{ job, photos: finding.photos }} name=${say('finding.picture')} /><//>
    <${Part} name=${say('recheck.corrected')}>
      <p class="big">${`“${correction.done}”`}</p>
      <p class="hint">${signed(people, correction)} · ${clock(correction.at)}</p>
      <${Judged} verdict=${correction.verdict} />
      <${Pictures} ...${{ job, photos: correction.photos }} name=${say('recheck.corrected')} />
    <//>
    <${Look} key=${correction.digest} ...${{ job, record, definitions, person, finding, correction }} />
  <//>`
}

/** @param {{job: string, record: any, definitions: any[], person: any, finding: any, correction: any}} props */
function Look({ job, record, definitions, person, finding, correction }) {
  const { item } = askedBy(definitions, finding)
  const key = `recheck/${job}/${correction.digest}`
  const [draft, change] = useDraft(person.id, key, { id: uuid7(), note: '', ...NO_SHOTS, ...NO_READING })
  const measured = useMeasured({ record, person, finding, item, draft })
  if (!draft) return null
  const fails = measured.record.verdict?.result === 'fail'
  const shown = draft.photos.length > 0 || measured.record.verdict?.result === 'pass'
  const must = finding.severity === 'critical' || !finding.severity
  const told = (/** @type {'good' | 'not_good'} */ result) => async () => {
    await enterCounted({ job, kind: 'recheck', subject: draft.id, draft: key, body: { finding: finding.id, correction: correction.digest, result, walk: walkId(record, measured.walk),
      photos: draft.photos, note: draft.note.trim(), ...measured.record, name: person.name, role: person.role } })
    const metal = ownMetal(record, measured.walk)
    if (metal) await dropDraft(person.id, metal)
    go('job', job, 'finding', finding.id)
  }
  const why = fails ? say('recheck.reading_fails') : must && !shown ? say('recheck.critical_needs') : say('recheck.good.under')
  return html`<${Part} name=${say('recheck.picture')}><${ShotsAgain} ...${{ job, draft, change }} first=${correction.photos.at(-1) ?? firstPicture(finding)} /><//>
    <${Reading} ...${{ job, record, item, measured, change }} />
    <${TextField} name="note" lines=${2} label=${say('item.note')} value=${draft.note} onChange=${(/** @type {string} */ note) => change({ note })} />
    <p class="hint">${say('recheck.limits')}</p>
    <${Care} />
    <${MainAction} name="not-good" plain label=${say('recheck.not_good')} under=${say('recheck.not_good.under')} run=${told('not_good')} />
    <${MainAction} name="good" label=${say('recheck.good')} under=${why} disabled=${fails || (must && !shown)} run=${told('good')} />`
}
