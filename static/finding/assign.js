// Who corrects a finding, by which day, and why it came about.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { enterCounted } from '../frame/enter.js'
import { useDraft } from '../frame/draft.js'
import { today } from '../frame/today.js'
import { Screen } from '../frame/screen.js'
import { Choice } from '../frame/choice.js'
import { TextField } from '../frame/text_field.js'
import { MainAction } from '../frame/main_action.js'
import { Cause } from './cause.js'
import { DAYS, dayAfter } from './day_after.js'
import { onceEach } from './filter.js'
import { NotOffered, useOffer } from './offer.js'
import { askedBy, title, where } from './told.js'

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props */
export function Assign({ job, record, definitions, person, rest }) {
  const finding = record.findings[rest[0]]
  const { definition } = askedBy(definitions, finding)
  const key = `assignment/${job}/${finding.id}`
  const before = finding.assignment
  const [draft, change] = useDraft(person.id, key, { firm: before?.firm ?? '', crew: before?.crew ?? finding.crew ?? '', day: before?.by_day ?? '', code: before?.cause.code ?? null, words: before?.cause.words ?? '', note: before?.note ?? '' })
  const offer = useOffer(finding, person, 'assignment')
  if (!draft || !offer) return null
  const frame = { title: say('assign'), over: title(definitions, finding), back: path('job', job, 'finding', finding.id), backTo: say('finding') }
  if (!offer.offered) return html`<${Screen} ...${frame}><${NotOffered} ...${{ offer, finding }} /><//>`
  const put = (/** @type {string} */ name) => (/** @type {string} */ value) => change({ [name]: value })
  const needs = !draft.firm.trim() && !draft.crew.trim() ? 'assign.needs_who' : draft.day && !/^\d{4}-\d\d-\d\d$/.test(draft.day) ? 'assign.needs_day' : ''
  const run = async () => {
    await enterCounted({ job, kind: 'assignment', subject: finding.id, replaces: before?.heads ?? [], draft: key, body: { finding: finding.id, firm: draft.firm.trim(), crew: draft.crew.trim(),
      by_day: draft.day || null, cause: { code: draft.code, words: draft.words.trim() }, note: draft.note.trim(), name: person.name, role: person.role } })
    go('job', job, 'finding', finding.id)
  }
  const days = DAYS.map((after) => ({ value: dayAfter(today(), after), label: say(`assign.in.${after}`), under: dayAfter(today(), after) }))
  return html`<${Screen} ...${frame}>
    <p class="big">${where(record, finding)}</p>
    <${Named} name="crew" label=${say('assign.crew')} value=${draft.crew} known=${crews(record)} put=${put('crew')} />
    <${Named} name="firm" label=${say('assign.firm')} value=${draft.firm} known=${firms(record)} put=${put('firm')} />
    <${Choice} name="by-day" label=${say('assign.by_day')} value=${draft.day} onChange=${(/** @type {string} */ day) => change({ day: day === draft.day ? '' : day })} options=${days} />
    <${TextField} name="day" type="date" label=${say('assign.other_day')} value=${draft.day} onChange=${put('day')} />
    <${Cause} ...${{ definition, code: draft.code, words: draft.words, change }} />
    <${TextField} name="note" lines=${2} label=${say('assign.note')} value=${draft.note} onChange=${put('note')} />
    <${MainAction} name="keep-assignment" label=${say('assign.keep')} under=${needs ? say(needs) : ''} disabled=${Boolean(needs)} run=${run} />
  <//>`
}

/** One of the names known, or another. @param {{name: string, label: string, value: string, known: string[], put: (value: string) => any}} props */
function Named({ name, label, value, known, put }) {
  return html`${known.length > 0 && html`<${Choice} name=${name} label=${label} value=${value} onChange=${put} options=${known.map((one) => ({ value: one, label: one }))} />`}
    <${TextField} name=${name} label=${known.length ? say('assign.another', { what: label }) : label} value=${value} onChange=${put} />`
}

/** @param {any} record @returns {string[]} */
function crews(record) {
  const said = [...Object.values(record.walks), ...Object.values(record.lots), ...Object.values(record.findings)]
  return onceEach(said.map((/** @type {any} */ one) => one.crew))
}

/** @param {any} record @returns {string[]} */
function firms(record) {
  return onceEach([...(record.job.parties ?? []).map((/** @type {any} */ one) => one.name), ...Object.values(record.findings).map((/** @type {any} */ one) => one.firm)])
}
