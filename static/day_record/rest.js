// The rest of the day: each "none today" in one press, or in own words; what is left open is not told.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { TextField } from '../frame/text_field.js'
import { NONE, PRESSED } from './pressed.js'
import { MAY_BE_NONE, nones } from './so_far.js'

const yesNo = () => [{ value: NONE, label: say('day_record.none') }, { value: 'tell', label: say('day_record.told') }]

/** A text, or none. @param {{name: 'submittals' | 'offsite', value: string, change: (patch: any) => any}} props */
export function Told({ name, value, change }) {
  return html`<div class="stack">
    <${Choice} name=${name} label=${say(`day_record.${name}`)} value=${value === NONE ? NONE : value ? 'tell' : ''} onChange=${(/** @type {string} */ one) => change({ [name]: one === NONE ? (value === NONE ? '' : NONE) : value === NONE || !value ? ' ' : value })} options=${yesNo()} />
    ${value && value !== NONE && html`<${TextField} name=${`${name}-words`} lines=${2} label=${say('day_record.own_words')} value=${value.trimStart()} onChange=${(/** @type {string} */ text) => change({ [name]: text || ' ' })} />`}
  </div>`
}

/** Several to press, and own words. @param {{name: 'safety' | 'tied', draft: any, change: (patch: any) => any}} props */
export function Several({ name, draft, change }) {
  const toggle = (/** @type {string} */ one) => change((/** @type {any} */ now) => ({ [name]: one === NONE ? (now[name].includes(NONE) ? [] : [NONE])
    : now[name].includes(one) ? now[name].filter((/** @type {string} */ old) => old !== one) : [...now[name].filter((/** @type {string} */ old) => old !== NONE), one] }))
  return html`<div class="stack">
    <${Choice} many name=${name} label=${say(`day_record.${name}`)} value=${draft[name]} onChange=${toggle} options=${[...PRESSED[name], NONE].map((one) => ({ value: one, label: say(`day_record.${name}.${one}`) }))} />
    <${TextField} name=${`${name}-words`} lines=${2} label=${say('day_record.own_words')} value=${draft[`${name}_words`]} onChange=${(/** @type {string} */ text) => change({ [`${name}_words`]: text })} />
  </div>`
}

/** @param {{rows: any[], change: (patch: any) => any}} props */
export function Instructions({ rows, change }) {
  const none = rows.length === 1 && rows[0].said === NONE
  const put = (/** @type {number} */ at, /** @type {any} */ patch) => change((/** @type {any} */ now) => ({ instructions: now.instructions.map((/** @type {any} */ row, /** @type {number} */ n) => (n === at ? { ...row, ...patch } : row)) }))
  const pick = (/** @type {string} */ one) => change({ instructions: one === NONE ? (none ? [] : [{ by: '', said: NONE }]) : none || rows.length === 0 ? [{ by: '', said: '' }] : rows })
  return html`<div class="stack">
    <${Choice} name="instructions" label=${say('day_record.instructions')} value=${none ? NONE : rows.length ? 'tell' : ''} onChange=${pick} options=${yesNo()} />
    ${!none && rows.map((row, at) => html`<div key=${at} class="stack"><${TextField} name=${`by-${at}`} label=${say('day_record.instructions.by')} value=${row.by} onChange=${(/** @type {string} */ by) => put(at, { by })} />
      <${TextField} name=${`said-${at}`} lines=${2} label=${say('day_record.instructions.said')} value=${row.said} onChange=${(/** @type {string} */ said) => put(at, { said })} /></div>`)}
    ${!none && rows.length > 0 && html`<button type="button" class="press" data-name="instruction-more" onClick=${() => change((/** @type {any} */ now) => ({ instructions: [...now.instructions, { by: '', said: '' }] }))}>${say('day_record.instructions.more')}</button>`}
  </div>`
}

/** @param {{rows: any[], change: (patch: any) => any}} props */
export function Delays({ rows, change }) {
  const toggle = (/** @type {string} */ why) => change((/** @type {any} */ now) => ({ delays: why === NONE ? (now.delays.some((/** @type {any} */ one) => one.why === NONE) ? [] : [{ why: NONE, hours: '' }])
    : now.delays.some((/** @type {any} */ one) => one.why === why) ? now.delays.filter((/** @type {any} */ one) => one.why !== why) : [...now.delays.filter((/** @type {any} */ one) => one.why !== NONE), { why, hours: '' }] }))
  const put = (/** @type {number} */ at, /** @type {string} */ hours) => change((/** @type {any} */ now) => ({ delays: now.delays.map((/** @type {any} */ row, /** @type {number} */ n) => (n === at ? { ...row, hours } : row)) }))
  return html`<div class="stack">
    <${Choice} many name="delays" label=${say('day_record.delays')} value=${rows.map((one) => one.why)} onChange=${toggle} options=${[...PRESSED.why.filter((one) => one !== 'holiday'), NONE].map((one) => ({ value: one, label: say(`day_record.why.${one}`) }))} />
    ${rows.map((row, at) => row.why !== NONE && html`<${Stepper} key=${row.why} name=${`delay-${row.why}`} label=${say('day_record.delays.hours', { why: say(`day_record.why.${row.why}`) })} value=${row.hours || null} steps=${[1]} low=${0} high=${24} onChange=${(/** @type {string} */ hours) => put(at, hours)} onWrong=${() => put(at, '')} />`)}
  </div>`
}

/** What there was none of today, all in one place. @param {{draft: any, change: (patch: any) => any}} props */
export function NoneToday({ draft, change }) {
  const now = nones(draft)
  const toggle = (/** @type {string} */ name) => change({ [name]: now.includes(name) ? (Array.isArray(MAY_BE_NONE[name]) ? [] : '') : MAY_BE_NONE[name], ...(name === 'safety' ? { safety_words: '' } : {}) })
  return html`<div class="brief"><${Choice} many name="none" label=${say('day_record.none_of')} hint=${say('day_record.none_of.hint')} value=${now} onChange=${toggle} options=${Object.keys(MAY_BE_NONE).map((one) => ({ value: one, label: say(`day_record.short.${one}`) }))} /></div>`
}
