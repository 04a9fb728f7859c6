// The weather through the day: one press writes the time and the sky; the wind and the metal's temperature go with it.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { Part } from '../frame/screen.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { TextField } from '../frame/text_field.js'
import { quantity, shown, unitOf } from '../frame/amount.js'
import { BY, SKY, WIND } from '../walk/new_walk.js'

/** @param {Date} [now] @returns {string} `07:30` by this phone's clock */
export function hour(now = new Date()) {
  return [now.getHours(), now.getMinutes()].map((one) => String(one).padStart(2, '0')).join(':')
}

/** @param {{record: any, rows: any[], change: (patch: any) => any}} props */
export function Weather({ record, rows, change }) {
  const heat = unitOf(record.job, 'heat')
  const last = rows.length - 1
  const put = (/** @type {number} */ at, /** @type {any} */ patch) => change((/** @type {any} */ now) => ({ weather: now.weather.map((/** @type {any} */ row, /** @type {number} */ n) => (n === at ? { ...row, ...patch } : row)) }))
  const press = (/** @type {string} */ sky) => change((/** @type {any} */ now) => ({ weather: [...now.weather, { at: hour(), sky, wind: '' }] }))
  const out = (/** @type {number} */ at) => () => change((/** @type {any} */ now) => ({ weather: now.weather.filter((/** @type {any} */ _, /** @type {number} */ n) => n !== at) }))
  return html`<${Part} name=${say('day_record.weather')}><div class="brief stack">
    <${Choice} name="sky-now" label=${say('day_record.weather.now')} hint=${say('day_record.weather.hint')} value="" onChange=${press} options=${SKY.map((one) => ({ value: one, label: say(`sky.${one}`) }))} />
    ${rows.map((row, at) => html`<div key=${at} class="stack weather-row" data-name="weather-row">
      <p class="row"><strong>${row.at}</strong> <span>${[say(`sky.${row.sky}`), row.wind && say(`wind.${row.wind}`), row.metal && shown(row.metal)].filter(Boolean).join(' · ')}</span></p>
      <details open=${at === last && !row.wind}><summary class="press" data-name="weather-more">${say('day_record.weather.more', { at: row.at })}</summary>
        <${Choice} name=${`wind-${at}`} label=${say('day_record.weather.wind', { at: row.at })} value=${row.wind} onChange=${(/** @type {string} */ wind) => put(at, { wind })} options=${WIND.map((one) => ({ value: one, label: say(`wind.${one}`) }))} />
        <${TextField} name=${`hour-${at}`} type="time" label=${say('day_record.weather.at')} value=${row.at} onChange=${(/** @type {string} */ value) => { if (value) put(at, { at: value }) }} />
        <${Stepper} name=${`metal-${at}`} label=${say('day_record.weather.metal')} value=${row.metal?.value ?? null} from=${heat === 'F' ? '70' : '20'} unit=${'°' + heat} steps=${[1, 10]} low=${-80} high=${260}
          onChange=${(/** @type {string} */ value) => put(at, { metal: quantity(value, heat), metal_by: row.metal_by ?? 'estimate' })} onWrong=${() => put(at, { metal: undefined })} />
        ${row.metal && html`<${Choice} name=${`by-${at}`} label=${say('walk.metal_by')} value=${row.metal_by} onChange=${(/** @type {string} */ metal_by) => put(at, { metal_by })} options=${BY.map((one) => ({ value: one, label: say(`walk.by.${one}`) }))} />`}
        <button type="button" class="press" data-name="weather-out" onClick=${out(at)}>${say('day_record.remove', { what: row.at })}</button>
      </details></div>`)}
  </div><//>`
}
