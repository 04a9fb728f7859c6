// How far each instrument of the job may be off, who says so, and how a reading near a limit is taken.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { enter } from '../frame/enter.js'
import { useDraft } from '../frame/draft.js'
import { shown } from '../frame/amount.js'
import { Part, Screen } from '../frame/screen.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { TextField } from '../frame/text_field.js'
import { MainAction } from '../frame/main_action.js'
import { jobBody, samplingOf, statedBy } from './job_body.js'

const NAMES = ['tape', 'rule', 'feeler', 'micrometer', 'depth_gauge', 'level', 'inclinometer', 'contact', 'infrared', 'estimate']
const STEPS = /** @type {Record<string, number[]>} */ ({ in: [0.001, 0.01], mm: [0.01, 0.1], deg: [0.1, 1], dF: [1, 5], dC: [0.5, 5], K: [0.5, 5] })
const ACCEPTANCE = ['own', 'guarded', 'simple']

/** @param {{job: string, record: any, person: any}} props */
export function Instruments({ job, record, person }) {
  const mine = person.role === 'administrator'
  const key = `instruments/${job}`
  const [draft, change, drop] = useDraft(person.id, key, { stated: statedBy(record.job), acceptance: record.job.acceptance ?? '', heads: record.job.heads })
  if (!draft) return null
  const wrong = Object.values(draft.stated).some((/** @type {any} */ one) => one.value === null || !one.source.trim())
  const run = async () => {
    await enter({ job, kind: 'job', subject: job, replaces: record.job.heads, draft: key, body: jobBody(record.job, draft.stated, draft.acceptance, samplingOf(record.job)) })
    await drop()
    go('job', job)
  }
  const set = (/** @type {string} */ name) => (/** @type {any} */ one) => change((/** @type {any} */ old) => {
    const { [name]: _, ...rest } = old.stated
    return { stated: one ? { ...rest, [name]: one } : rest }
  })
  return html`<${Screen} title=${say('instruments')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name}>
    <p>${say('instruments.what')}</p>
    <${Part} name=${say('instruments.list')}>
      ${NAMES.map((name) => html`<${Row} key=${name} ...${{ name, known: record.job.instruments[name], stated: draft.stated[name], set: mine ? set(name) : null }} />`)}
    <//>
    <${Part} name=${say('instruments.acceptance')}>
      ${mine
        ? html`<${Choice} name="acceptance" label=${say('instruments.acceptance.how')} value=${draft.acceptance || 'own'} onChange=${(/** @type {string} */ one) => change({ acceptance: one === 'own' ? '' : one })}
            options=${ACCEPTANCE.map((one) => ({ value: one, label: say(`acceptance.${one}`), under: say(`acceptance.${one}.risk`) }))} />`
        : html`<p class="big" data-name="acceptance">${say(`acceptance.${record.job.acceptance ?? 'own'}`)}</p><p>${say(`acceptance.${record.job.acceptance ?? 'own'}.risk`)}</p>`}
    <//>
    ${mine ? html`<${MainAction} name="save-instruments" label=${say('save')} under=${wrong ? say('instruments.source_needed') : ''} disabled=${wrong} run=${run} />` : html`<p class="hint">${say('instruments.read_only')}</p>`}
  <//>`
}

/** @param {{name: string, known: any, stated: any, set: ((one: any) => any) | null}} props `known`: in force now; `stated`: what the job states, or is about to */
function Row({ name, known, stated, set }) {
  const now = stated ?? known.uncertainty
  const origin = stated ? `${say('instruments.own')}${stated.source ? `: ${stated.source}` : ''}` : say(name === 'level' ? 'instruments.ours.level' : 'instruments.ours')
  const begin = () => set?.({ value: known.uncertainty.value, unit: known.uncertainty.unit, source: '' })
  return html`<div class="stack" data-instrument=${name}>
    <div class="row"><strong>${say(`instrument.${name}`)}</strong><span class="number">±\u00a0${now.value === null ? '—' : shown(now)}</span><span class="hint">${origin}</span></div>
    ${set && !stated && html`<button type="button" class="press" data-name=${`own-${name}`} onClick=${begin} aria-label=${`${say('instruments.state')}: ${say(`instrument.${name}`)}`}>${say('instruments.state')}</button>`}
    ${set && stated && html`
      <${Stepper} name=${`doubt-${name}`} label=${say('instruments.doubt')} value=${stated.value} unit=${shown({ value: '', unit: stated.unit }).trim()} steps=${STEPS[stated.unit] ?? [0.1, 1]} low=${0} high=${1000}
        onChange=${(/** @type {string} */ value) => set({ ...stated, value })} onWrong=${() => set({ ...stated, value: null })} />
      <${TextField} name=${`source-${name}`} label=${say('instruments.source')} hint=${say('instruments.source.hint')} value=${stated.source} onChange=${(/** @type {string} */ source) => set({ ...stated, source })} />
      <button type="button" class="press" data-name=${`ours-${name}`} onClick=${() => set(null)}>${say('instruments.back_to_ours')}</button>`}
  </div>`
}
