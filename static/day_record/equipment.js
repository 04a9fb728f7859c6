// What was used and who ran it: carried over from the crew's last day, its hours never.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { TextField } from '../frame/text_field.js'
import { NONE, PRESSED } from './pressed.js'
import { worded } from './there.js'

/** @param {{rows: any[], change: (patch: any) => any}} props */
export function Equipment({ rows, change }) {
  const none = rows.length === 1 && rows[0].what === NONE
  const put = (/** @type {number} */ at, /** @type {any} */ patch) => change((/** @type {any} */ now) => ({ equipment: now.equipment.map((/** @type {any} */ row, /** @type {number} */ n) => (n === at ? { ...row, ...patch } : row)) }))
  const row = (/** @type {string} */ what) => ({ what, operator: '', setting: '', hours: '' })
  const toggle = (/** @type {string} */ what) => change((/** @type {any} */ now) => ({ equipment: what === NONE ? (none ? [] : [row(NONE)])
    : now.equipment.some((/** @type {any} */ one) => one.what === what) ? now.equipment.filter((/** @type {any} */ one) => one.what !== what)
      : [...now.equipment.filter((/** @type {any} */ one) => one.what !== NONE), row(what)] }))
  return html`
    <${Choice} many name="equipment" label=${say('day_record.equipment.add')} value=${rows.map((one) => one.what)} onChange=${toggle} options=${[...PRESSED.equipment, NONE].map((one) => ({ value: one, label: say(`day_record.equipment.${one}`) }))} />
    ${!none && rows.map((one, at) => html`<div key=${one.what} class="statement stack" data-name="equipment-row">
      <h3>${worded('equipment', one.what)}</h3>
      <${TextField} name=${`operator-${one.what}`} label=${say('day_record.equipment.operator')} value=${one.operator} onChange=${(/** @type {string} */ operator) => put(at, { operator })} />
      <${TextField} name=${`setting-${one.what}`} label=${say('day_record.equipment.setting')} hint=${say('day_record.equipment.setting.hint')} value=${one.setting} onChange=${(/** @type {string} */ setting) => put(at, { setting })} />
      <${Stepper} name=${`hours-${one.what}`} label=${say('day_record.equipment.hours')} value=${one.hours || null} steps=${[1]} low=${0} high=${24} onChange=${(/** @type {string} */ hours) => put(at, { hours })} onWrong=${() => put(at, { hours: '' })} />
    </div>`)}`
}
