// The engineer lets a finding stand as it is: in words, with the document that says so, or its reference.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { enterCounted } from '../frame/enter.js'
import { useDraft } from '../frame/draft.js'
import { Part, Screen } from '../frame/screen.js'
import { TextField } from '../frame/text_field.js'
import { MainAction } from '../frame/main_action.js'
import { DocumentPhoto } from '../walk/document.js'
import { Against } from './against.js'
import { NotOffered, useOffer } from './offer.js'
import { Weight } from './states.js'
import { title, where } from './told.js'

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props */
export function Concede({ job, record, definitions, person, rest }) {
  const finding = record.findings[rest[0]]
  const offer = useOffer(finding, person, 'concession')
  const key = `concession/${job}/${finding.id}`
  const [draft, change] = useDraft(person.id, key, { reason: '', reference: '', document: null, waiting: false })
  if (!draft || !offer) return null
  const frame = { title: say('concede'), over: title(definitions, finding), back: path('job', job, 'finding', finding.id), backTo: say('finding') }
  if (!offer.offered) return html`<${Screen} ...${frame}><${NotOffered} ...${{ offer, finding }} /><//>`
  const needs = [!draft.reason.trim() && 'concede.needs_reason', !draft.document && !draft.reference.trim() && 'concede.needs_document'].filter(Boolean)
  const put = (/** @type {string} */ name) => (/** @type {string} */ value) => change({ [name]: value })
  const run = async () => {
    await enterCounted({ job, kind: 'concession', subject: finding.id, replaces: finding.concession?.by === person.id ? [finding.concession.digest] : [], draft: key, body: { finding: finding.id, reason: draft.reason.trim(),
      document: draft.document, reference: draft.reference.trim(), name: person.name, role: person.role } })
    go('job', job, 'finding', finding.id)
  }
  return html`<${Screen} ...${frame}>
    <p class="big">${where(record, finding)}</p>
    <p><${Weight} severity=${finding.severity} /></p>
    <${Part} name=${say('finding.against')}><${Against} ...${{ definitions, finding }} /><//>
    <${DocumentPhoto} ...${{ job, sha256: draft.document, waiting: draft.waiting, change }} />
    <${TextField} name="reference" label=${say('disposition.reference')} hint=${say('disposition.reference.hint')} value=${draft.reference} onChange=${put('reference')} />
    ${!draft.document && draft.reference.trim() && html`<p class="problem"><strong>▲ ${say('finding.problem.concession_without_document')}</strong></p>`}
    <${TextField} name="reason" lines=${3} label=${say('concede.reason')} value=${draft.reason} onChange=${put('reason')} />
    <p class="hint">${say('concede.limits')}</p>
    <${MainAction} name="sign-concession" label=${say('concede.sign')} run=${run} disabled=${needs.length > 0}
      under=${needs.length ? needs.map((one) => say(String(one))).join(' ') : `${person.name}, ${say(`role.${person.role}`)}`} />
  <//>`
}
