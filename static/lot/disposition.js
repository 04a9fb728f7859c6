// After a lot was not accepted: the technical lead or the engineer says what is done with it. Open it, replace it, or
// accept it with a document. Signed, and never taken back: a later choice stands beside the earlier one in the log.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { clock } from '../frame/age.js'
import { Choice } from '../frame/choice.js'
import { useDraft } from '../frame/draft.js'
import { enter } from '../frame/enter.js'
import { Facts } from '../frame/facts.js'
import { usePeople } from '../frame/people.js'
import { signed } from '../frame/signer.js'
import { MainAction } from '../frame/main_action.js'
import { TextField } from '../frame/text_field.js'
import { Picture } from '../walk/pair.js'
import { DocumentPhoto } from '../walk/document.js'

const CHOICES = ['open', 'replace', 'accept']

/** @param {{job: string, lot: any}} props what was chosen */
export function Chosen({ job, lot }) {
  const made = lot.disposition
  const people = usePeople(job)
  return html`<div class=${'statement chosen ' + made.choice} data-name="disposition" data-choice=${made.choice}>
    <p class="over">${say('lot.disposition')}</p>
    <p class="figure-line">${say(`lot.choice.${made.choice}`)}</p>
    <${Facts} rows=${[[say('disposition.reason'), made.reason], [say('disposition.reference'), made.reference],
      [say('disposition.by'), `${signed(people, made)}, ${clock(made.at)}`]]} />
    ${made.document && html`<${Picture} job=${job} sha256=${made.document} name=${say('photo.document')} />`}
    ${!made.stands && html`<p class="problem"><strong>▲ ${say(made.choice === 'accept' && !made.document && !made.reference.trim() ? 'lot.disposition.no_document' : 'lot.disposition.no_authority')}</strong></p>`}
  </div>`
}

/** @param {{job: string, lot: any, person: any}} props */
export function Choose({ job, lot, person }) {
  const key = `disposition/${job}/${lot.id}`
  const [draft, change, drop] = useDraft(person.id, key, { choice: '', reason: '', reference: '', document: null, waiting: false })
  if (!draft) return null
  const needs = [!draft.choice && 'disposition.needs.choice', !draft.reason.trim() && 'disposition.needs.reason',
    draft.choice === 'accept' && !draft.document && !draft.reference.trim() && 'disposition.needs.document'].filter(Boolean)
  const run = async () => {
    const accept = draft.choice === 'accept'
    await enter({ job, kind: 'disposition', subject: lot.id, replaces: lot.disposition?.heads ?? [], draft: key, body: { lot: lot.id, choice: draft.choice,
      reason: draft.reason.trim(), document: accept ? draft.document : null, reference: accept ? draft.reference.trim() : '', name: person.name, role: person.role } })
    await drop()
  }
  return html`<div class="stack" data-name="choose">
    <${Choice} name="disposition" label=${say('disposition.which')} value=${draft.choice} onChange=${(/** @type {string} */ choice) => change({ choice })}
      options=${CHOICES.map((one) => ({ value: one, label: say(`lot.choice.${one}`), under: say(`disposition.${one}.means`) }))} />
    ${draft.choice === 'accept' && html`
      <${DocumentPhoto} ...${{ job, sha256: draft.document, waiting: draft.waiting, change }} />
      <${TextField} name="reference" label=${say('disposition.reference')} hint=${say('disposition.reference.hint')} value=${draft.reference} onChange=${(/** @type {string} */ reference) => change({ reference })} />`}
    <${TextField} name="reason" lines=${3} label=${say('disposition.reason')} hint=${say('disposition.reason.hint')} value=${draft.reason} onChange=${(/** @type {string} */ reason) => change({ reason })} />
    <p class="hint">${say('disposition.limits')}</p>
    <${MainAction} name="sign-disposition" label=${say('disposition.sign')} run=${run} disabled=${needs.length > 0}
      under=${needs.length ? needs.map((one) => say(String(one))).join(' ') : say('disposition.sign.under', { name: person.name, role: say(`role.${person.role}`) })} />
  </div>`
}
