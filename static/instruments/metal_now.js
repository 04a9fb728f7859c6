// The metal's temperature in use, with its instrument, its doubt and its age; asked again when it is too old.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { shown, unitOf } from '../frame/amount.js'
import { Part } from '../frame/screen.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'

const BY = ['contact', 'infrared', 'estimate']
const HOT = /** @type {Record<string, number>} */ ({ F: 120, C: 49 })

/** @param {{record: any, metal: any, forget: () => any}} props `metal` of `useMetal`; `forget`: the reading, when it is too old for a new temperature */
export function MetalNow({ record, metal, forget }) {
  const [asked, setAsked] = useState(false)
  if (!metal) return null
  const { speaks, again, late, picture } = metal
  const take = async (/** @type {string} */ value, /** @type {string} */ by) => {
    if (again && late && !picture) forget() // at once: what is typed while the temperature is kept is a new reading
    await metal.take(value, by)
    setAsked(false)
  }
  const age = speaks && say(picture ? 'metal.from_picture' : 'metal.ago', { age: minutes(speaks.age) })
  return html`<${Part} name=${say('walk.metal')}>
    ${speaks && html`<p class="figure-line" data-name="metal-in-use" data-age=${speaks.age}>${shown(speaks)}</p>
      <p class="hint">${say(`walk.by.${speaks.by}`)} · ±\u00a0${shown(speaks.uncertainty)} · ${age}</p>
      ${Number(speaks.value) >= HOT[speaks.unit] && html`<p class="problem"><strong>▲ ${say('gate.hot')}</strong></p>`}`}
    ${again && html`<p class="problem" role="alert" data-name="metal-due"><strong>▲ ${say(!late ? 'metal.due' : picture ? 'metal.picture_old' : 'metal.reading_old')}</strong></p>`}
    ${again || asked
      ? html`<${Ask} ...${{ record, take }} />`
      : html`<div class="ways">
          <button type="button" class="press" data-name="metal-changed" onClick=${() => { metal.turn(); setAsked(true) }}>${say('metal.changed')}</button>
          <button type="button" class="press" data-name="metal-again" onClick=${() => setAsked(true)}>${say('metal.again')}</button></div>`}
  <//>`
}

/** @param {{record: any, take: (value: string, by: string) => any}} props */
function Ask({ record, take }) {
  const [value, setValue] = useState(/** @type {string | null} */ (null))
  const [by, setBy] = useState('')
  const heat = unitOf(record.job, 'heat')
  return html`<${Stepper} name="metal" label=${say('metal.what')} value=${value} from=${heat === 'F' ? '70' : '20'} unit=${'°' + heat} steps=${[1, 10]} low=${-80} high=${260}
      onChange=${setValue} onWrong=${() => setValue(null)} />
    <${Choice} name="metal-by" label=${say('walk.metal_by')} value=${by} onChange=${setBy}
      options=${BY.map((one) => ({ value: one, label: say(`metal.by.${one}`), under: '±\u00a0' + shown(record.job.instruments[one].uncertainty) }))} />
    <button type="button" class="press tall" data-name="metal-take" disabled=${value === null || !by} onClick=${() => take(/** @type {string} */ (value), by)}>
      <span class="label">${say('metal.take')}</span></button>`
}

/** @param {number} seconds */
function minutes(seconds) {
  return seconds < 60 ? say('metal.under_a_minute') : say('metal.minutes', { n: Math.floor(seconds / 60) })
}
