// Write a crew's day: presses and steps first, words only where there is something to say. The draft survives a kill.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { useDraft } from '../frame/draft.js'
import { enterCounted } from '../frame/enter.js'
import { Part, Screen } from '../frame/screen.js'
import { MainAction } from '../frame/main_action.js'
import { Stepper } from '../frame/stepper.js'
import { TextField } from '../frame/text_field.js'
import { blankDay } from './blank.js'
import { dayBody } from './body.js'
import { Equipment } from './equipment.js'
import { Fold } from './fold.js'
import { Idle } from './idle.js'
import { Known } from './known.js'
import { Labels } from './labels.js'
import { Materials } from './materials.js'
import { Delays, Instructions, NoneToday, Several, Told } from './rest.js'
import { soFar, untold } from './so_far.js'
import { crewStep, dayOf } from './there.js'
import { Weather } from './weather.js'

/** @param {{job: string, record: any, person: any, day: string, crew: string, old: any}} props `old`: this person's entry to correct, or null */
export function Write({ job, record, person, day, crew, old }) {
  const key = `day/${job}/${old?.id ?? `${day}/${crew}`}`
  const [draft, change] = useDraft(person.id, key, blankDay(record, person, day, crew, old))
  if (!draft) return null
  const known = dayOf(record, day, crew)
  const areas = known?.areas ?? []
  const left = untold(draft)
  const told = soFar(draft)
  const part = (/** @type {string} */ name, /** @type {any} */ inside) => html`<${Fold} key=${name} name=${name} title=${say(`day_record.${name}`)} told=${told[name]}>${inside}<//>`
  const sign = async (/** @type {string} */ statement, /** @type {boolean} */ idle) => {
    await enterCounted({ job, kind: 'day', subject: draft.id, replaces: old?.heads ?? [], draft: key, body: dayBody(draft, person, statement, idle) })
    go('job', job, 'day-record', draft.day, crewStep(draft.crew.trim()))
  }
  const frame = { title: say('day_record.title'), over: `${day} · ${crew || say('day_record.no_crew')}`, back: path('job', job, 'day-record'), backTo: say('day_record.list') }
  if (draft.idle) return html`<${Screen} ...${frame}><${Idle} ...${{ draft, change, known, person }} sign=${(/** @type {string} */ statement) => sign(statement, true)} /><//>`
  const statement = say('day_record.statement')
  return html`<${Screen} ...${frame}>
    ${!old && html`<button type="button" class="press" data-name="idle" onClick=${() => change({ idle: true })}>${say('day_record.no_work')}</button>`}
    <${Known} ...${{ record, known }} />
    ${draft.carried && html`<p class="hint" data-name="carried">${say('day_record.carried', { day: draft.carried })}</p>`}
    <${Stepper} name="heads" label=${say('day_record.people')} value=${draft.head_count} from="1" steps=${[1]} low=${0} high=${99} onChange=${(/** @type {string} */ head_count) => change({ head_count })} onWrong=${() => change({ head_count: null })} />
    <${Weather} ...${{ record, change }} rows=${draft.weather} />
    <${NoneToday} ...${{ draft, change }} />
    <${Part} name=${say('day_record.rest')}>
      ${part('work', html`<${TextField} name="work" lines=${2} label=${say('day_record.work')} hint=${say('day_record.work.hint')} value=${draft.work} onChange=${(/** @type {string} */ work) => change({ work })} />`)}
      ${part('materials', html`<${Materials} ...${{ job, record, areas, draft, change }} />`)}
      ${part('equipment', html`<${Equipment} rows=${draft.equipment} change=${change} />`)}
      ${part('instructions', html`<${Instructions} rows=${draft.instructions} change=${change} />`)}
      ${part('delays', html`<${Delays} rows=${draft.delays} change=${change} />`)}
      ${/** @type {('submittals' | 'offsite')[]} */ (['submittals', 'offsite']).map((name) => part(name, html`<${Told} name=${name} value=${draft[name]} change=${change} />`))}
      ${/** @type {('safety' | 'tied')[]} */ (['safety', 'tied']).map((name) => part(name, html`<${Several} name=${name} ...${{ draft, change }} />`))}
      ${part('photos', html`<${Labels} role="day" job=${job} photos=${draft.photos} waiting=${draft.waiting === 'day'} wait=${(/** @type {boolean} */ on) => change({ waiting: on ? 'day' : '' })} change=${(/** @type {string[]} */ photos) => change({ photos, waiting: '' })} />`)}
    <//>
    ${left.length > 0 && html`<p class="hint" data-name="untold">${say('day_record.not_said', { what: left.map((one) => say(`day_record.${one}`)).join(', ') })}</p>`}
    <p class="statement">${statement}</p>
    <${MainAction} name="sign-day" label=${say(old ? 'day_record.sign.correct' : 'day_record.sign')} under=${say('day_record.sign.under', { name: person.name, role: say(`role.${person.role}`) })} run=${() => sign(statement, false)} />
  <//>`
}
