// How this job's lots are sampled, severity by severity: what is in force, who says so, and what it comes to. The office
// may state its own; everything it leaves out is ours.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { enter } from '../frame/enter.js'
import { useDraft } from '../frame/draft.js'
import { MainAction } from '../frame/main_action.js'
import { Part, Screen } from '../frame/screen.js'
import { jobBody, samplingOf, statedBy } from '../jobs/job_body.js'
import { ByTable, Critical, HowMany, Nonresponse, Reduced } from './sampling_rows.js'

const ROWS = /** @type {[string, any][]} */ ([['critical', Critical], ['major', ByTable], ['minor', ByTable], ['audit', ByTable],
  ['nonresponse', Nonresponse], ['reduced', Reduced], ['places', HowMany], ['night_places', HowMany]])

/** @param {{job: string, record: any, person: any}} props */
export function Sampling({ job, record, person }) {
  const mine = person.role === 'administrator'
  const key = `sampling/${job}`
  const [draft, change, drop] = useDraft(person.id, key, { stated: samplingOf(record.job), wrong: {} })
  if (!draft) return null
  const wrong = Object.values(draft.wrong).some(Boolean)
  const run = async () => {
    await enter({ job, kind: 'job', subject: job, replaces: record.job.heads, draft: key, body: jobBody(record.job, statedBy(record.job), record.job.acceptance ?? '', draft.stated) })
    await drop()
    go('job', job)
  }
  const set = (/** @type {string} */ name) => (/** @type {any} */ one) => change((/** @type {any} */ old) => {
    const { [name]: _, ...rest } = old.stated
    return { stated: one === null ? rest : { ...rest, [name]: one }, wrong: { ...old.wrong, [name]: false } }
  })
  const miss = (/** @type {string} */ name) => () => change((/** @type {any} */ old) => ({ wrong: { ...old.wrong, [name]: true } }))
  return html`<${Screen} title=${say('sampling')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name}>
    <p>${say('sampling.what')}</p>
    ${ROWS.map(([name, Row]) => html`<${Part} key=${name} name=${say(`sampling.${name}`)}>
      <div class="stack" data-sampling=${name}>
        <${Row} ...${{ name, known: record.job.sampling[name], stated: draft.stated[name], set: mine ? set(name) : null, miss: miss(name) }} />
        <p class="hint">${say(draft.stated[name] === undefined ? `sampling.${name}.source` : 'sampling.own')}</p>
        ${mine && (draft.stated[name] === undefined
          ? html`<button type="button" class="press" data-name=${`own-${name}`} onClick=${() => set(name)(begun(name, record.job.sampling[name]))} aria-label=${`${say('sampling.state')}: ${say(`sampling.${name}`)}`}>${say('sampling.state')}</button>`
          : html`<button type="button" class="press" data-name=${`ours-${name}`} onClick=${() => set(name)(null)} aria-label=${`${say('sampling.back_to_ours')}: ${say(`sampling.${name}`)}`}>${say('sampling.back_to_ours')}</button>`)}
      </div>
    <//>`)}
    ${mine ? html`<${MainAction} name="save-sampling" label=${say('save')} under=${wrong ? say('sampling.wrong') : ''} disabled=${wrong} run=${run} />` : html`<p class="hint">${say('sampling.read_only')}</p>`}
  <//>`
}

/** Where a form begins: at what is in force. @param {string} name @param {any} known */
function begun(name, known) {
  return known ?? (name === 'critical' ? { defective: '0.1', confidence: '0.95' } : known)
}
