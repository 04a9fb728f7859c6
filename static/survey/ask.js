// Write down what people say of a claim, and sign it: presses first, words where there is something to say. The draft
// survives a kill.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { quantity, unitOf } from '../frame/amount.js'
import { useDraft } from '../frame/draft.js'
import { enterCounted } from '../frame/enter.js'
import { Choice } from '../frame/choice.js'
import { MainAction } from '../frame/main_action.js'
import { Lost } from '../frame/opening.js'
import { Part, Screen } from '../frame/screen.js'
import { Stepper } from '../frame/stepper.js'
import { TextField } from '../frame/text_field.js'
import { Fold } from '../day_record/fold.js'
import { uuid7 } from '../entry/uuid7.js'
import { Shots } from '../finding/shots.js'
import { build } from '../server/build.js'
import { computed } from '../walk/verdict.js'
import { placeIn, stepsOf } from './address.js'
import { blank, bodyOf, lacking } from './body.js'
import { DayField } from './day_field.js'
import { Changes, Samples, Substitutions } from './rows.js'
import { useSurvey } from './use_survey.js'
import { WearAgainst, useWear } from './wear_against.js'

/** @param {{job: string, record: any, person: any, rest: string[]}} props `rest`: the place */
export function SurveyAsk({ job, record, person, rest }) {
  const place = placeIn(record, rest)
  const { told } = useSurvey(record, place)
  const [rulebook, setRulebook] = useState('')
  useEffect(() => { build().then((/** @type {string} */ one) => setRulebook(one), () => {}) }, [])
  const old = (told?.asked ?? []).filter((/** @type {any} */ one) => one.by === person.id).at(-1) ?? null
  const [draft, change] = useDraft(person.id, `survey/${job}/${rest.join('/')}`, told && blank(old, uuid7()))
  const near = unitOf(record.job, 'near')
  const mark = draft?.wear != null ? { length: quantity(draft.wear, near), uncertainty: quantity(draft.doubt ?? '0', near) } : null
  const answer = useWear(told, mark)
  if (!place) return html`<${Lost} />`
  if (!draft) return html`<${Screen} title=${say('survey.ask.title')}><p role="status">${say('survey.found.counting')}</p><//>`
  const within = (/** @type {string} */ part, /** @type {string} */ name) => (/** @type {any} */ value) => change((/** @type {any} */ now) => ({ [part]: { ...now[part], [name]: value } }))
  const field = (/** @type {string} */ part, /** @type {string} */ name, /** @type {string} */ label, lines = 0) => html`<${TextField} name=${`${part}-${name}`} lines=${lines || undefined} label=${label} value=${draft[part][name]} onChange=${within(part, name)} />`
  const dayOf = (/** @type {string} */ part, /** @type {string} */ name, /** @type {string} */ label) => html`<${DayField} name=${`${part}-${name}`} label=${label} value=${draft[part][name]} onChange=${within(part, name)} />`
  const wants = lacking(draft)
  const sign = async () => {
    const wear = mark && { ...mark, verdict: answer ? computed(answer, rulebook) : { result: 'not_determinable', rule: 'wear@1', rulebook, reason: null, inputs: {}, values: {} } }
    await enterCounted({ job, kind: 'survey', subject: draft.id, replaces: old ? old.heads : [], draft: `survey/${job}/${rest.join('/')}`, body: bodyOf(draft, place, person, say('survey.statement'), wear) })
    go('job', job, 'survey-found', ...stepsOf(place))
  }
  return html`<${Screen} title=${say('survey.ask.title')} over=${record.areas[place.area].name} back=${path('job', job, 'survey-found', ...stepsOf(place))} backTo=${say('survey.found.title')}>
    <p class="hint">${say('survey.ask.hearsay')}</p>
    <${Choice} name="warranty-shown" label=${`${say('survey.warranty')}: ${say('survey.warranty.shown')}`} value=${draft.warranty.shown} onChange=${within('warranty', 'shown')} options=${['shown', 'not_shown', 'contradicted'].map((one) => ({ value: one, label: say(`survey.warranty.shown.${one}`) }))} />
    <${Fold} name="warranty" title=${say('survey.warranty')} told=${draft.warranty.number}>
      ${field('warranty', 'number', say('survey.warranty.number'))}${field('warranty', 'by', say('survey.warranty.by'))}
      ${dayOf('warranty', 'from', say('survey.warranty.from'))}${dayOf('warranty', 'until', say('survey.warranty.until'))}${field('warranty', 'terms', say('survey.warranty.terms'), 2)}<//>
    <${Fold} name="event" title=${say('survey.event')} told=${draft.event.what}>
      ${field('event', 'what', say('survey.event.what_happened'), 2)}${dayOf('event', 'day', say('survey.event.on_day'))}${field('event', 'figures', say('survey.event.figures'), 2)}${field('event', 'source', say('survey.event.source'))}<//>
    <${Fold} name="noticed" title=${say('survey.noticed')} told=${draft.noticed.by}>
      ${dayOf('noticed', 'day', say('survey.noticed.day'))}${field('noticed', 'by', say('survey.noticed.by'))}${field('noticed', 'said', say('survey.noticed.said'), 2)}<//>
    <${Fold} name="substitutions" title=${say('survey.substitutions')} told=${draft.substitutions.map((/** @type {any} */ row) => row.what).join(', ')}><${Substitutions} rows=${draft.substitutions} change=${change} /><//>
    <${Choice} name="changed" label=${say('survey.changes.asked')} value=${draft.changed} onChange=${(/** @type {string} */ changed) => change({ changed })} options=${['yes', 'no', 'not_known', 'not_asked'].map((one) => ({ value: one, label: say(`survey.changes.${one}`) }))} />
    ${draft.changed === 'yes' && html`<${Part} name=${say('survey.changes')}><${Changes} rows=${draft.changes} change=${change} /><//>`}
    <${Fold} name="samples" title=${say('survey.samples')} told=${draft.samples.map((/** @type {any} */ row) => row.bag).join(', ')}><${Samples} job=${job} rows=${draft.samples} change=${change} /><//>
    <${Part} name=${say('survey.wear')}><p class="hint">${say('survey.wear.hint')}</p>
      <${Stepper} name="wear" label=${say('survey.wear.length')} value=${draft.wear} unit=${near} steps=${near === 'mm' ? [1, 10] : [0.0625, 0.5]} low=${0} high=${near === 'mm' ? 1000 : 39} onChange=${(/** @type {string} */ wear) => change({ wear })} onWrong=${() => change({ wear: null })} />
      ${draft.wear !== null && html`<${Stepper} name="doubt" label=${say('survey.wear.doubt')} value=${draft.doubt} unit=${near} steps=${near === 'mm' ? [1] : [0.0625]} low=${0} high=${near === 'mm' ? 1000 : 39} onChange=${(/** @type {string} */ doubt) => change({ doubt })} onWrong=${() => change({ doubt: null })} />
        <${TextField} name="wear-by" label=${say('survey.wear.by')} value=${draft.wear_by} onChange=${(/** @type {string} */ wear_by) => change({ wear_by })} />
        <${WearAgainst} answer=${answer} />`}<//>
    <${TextField} name="note" lines=${3} label=${say('survey.note')} hint=${say('survey.note.hint')} value=${draft.note} onChange=${(/** @type {string} */ note) => change({ note })} />
    <${Part} name=${say('survey.pictures')}><${Shots} ...${{ job, draft, change }} /><//>
    <p class="statement">${say('survey.statement')}</p>
    <${MainAction} name="sign-survey" label=${say('survey.sign')} under=${wants ? say(wants) : say('survey.sign.under', { name: person.name, role: say(`role.${person.role}`) })} disabled=${Boolean(wants) || (mark && (!answer || !rulebook))} run=${sign} />
  <//>`
}
