// One material: its label in the picture and in a few presses. What the approval says stands first among the choices.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { Choice } from '../frame/choice.js'
import { TextField } from '../frame/text_field.js'
import { AgainstNow } from './against.js'
import { Labels } from './labels.js'
import { PRESSED, SHEET, SYSTEMS } from './pressed.js'
import { worded } from './there.js'

const OTHER = '\n' // no label reads so
const GAUGES = ['22', '24', '26']

/** What stands in one line of a material. @param {any} row */
export function summary(row) {
  return [row.quantity, row.gauge && `${row.gauge} ${row.gauge_system ?? ''}`.trim(), row.coating, row.coil, worded('accepted', row.accepted), worded('stored', row.stored)].filter(Boolean).join(' · ')
}

/** What the areas' approvals name, once each. @param {any} record @param {string[]} areas @param {string} name @returns {string[]} */
export function approved(record, areas, name) {
  const ids = areas.filter((one) => record.areas[one])
  const all = (ids.length ? ids : Object.keys(record.areas)).map((one) => record.assemblies[record.areas[one].assembly]?.[name])
  return [...new Set(all.filter(Boolean).map(String))].sort()
}

/** @param {{job: string, record: any, areas: string[], row: any, waiting: boolean, wait: (on: boolean) => any, put: (patch: any) => any, out: () => any, done: () => any}} props */
export function Material({ job, record, areas, row, waiting, wait, put, out, done }) {
  const sheet = SHEET.includes(row.what)
  const [system] = approved(record, areas, 'gauge_system')
  const right = approved(record, areas, 'gauge')
  const gauges = [...new Set([...right, ...GAUGES])].sort()
  const coatings = approved(record, areas, 'coating')
  const typedGauge = row.gauge_other || (row.gauge && !gauges.includes(row.gauge))
  const typedCoating = row.coating_other || (row.coating && !coatings.includes(row.coating))
  const field = (/** @type {string} */ name, /** @type {string} */ label) => html`<${TextField} name=${`material-${name}`} label=${say(label)} value=${row[name] ?? ''} onChange=${(/** @type {string} */ value) => put({ [name]: value })} />`
  const pressed = (/** @type {'accepted' | 'stored'} */ name) => html`<${Choice} name=${name} label=${say(`day_record.materials.${name}`)} value=${row[name]} onChange=${(/** @type {string} */ value) => put({ [name]: value })}
    options=${PRESSED[name].map((one) => ({ value: one, label: say(`day_record.${name}.${one}`) }))} />`
  const as = (/** @type {boolean} */ yes) => (yes ? say('day_record.materials.as_approved') : undefined)
  return html`<div class="statement stack" data-name="material-open">
    <h3>${worded('what', row.what)}</h3>
    <${Labels} ...${{ job, photos: row.photos, waiting, wait }} change=${(/** @type {string[]} */ photos) => put({ photos })} />
    ${sheet && html`<${Choice} name="gauge" label=${say('day_record.materials.gauge')} value=${typedGauge ? OTHER : row.gauge ?? ''}
        onChange=${(/** @type {string} */ gauge) => put(gauge === OTHER ? { gauge: '', gauge_other: true, gauge_system: row.gauge_system ?? system } : { gauge, gauge_other: undefined, gauge_system: row.gauge_system ?? system })}
        options=${[...gauges.map((one) => ({ value: one, label: one, under: as(right.includes(one)) })), { value: OTHER, label: say('day_record.materials.gauge.other') }]} />
      ${typedGauge && field('gauge', 'day_record.materials.gauge_typed')}
      ${row.gauge && html`<details open=${!row.gauge_system}><summary class="press" data-name="open-system">${say('day_record.materials.system')}: ${row.gauge_system || say('day_record.not_told')}</summary><${Choice} name="gauge-system" label=${say('day_record.materials.system')} value=${row.gauge_system ?? ''} onChange=${(/** @type {string} */ one) => put({ gauge_system: one })} options=${SYSTEMS.map((one) => ({ value: one, label: one, under: as(one === system) }))} /></details>`}
      <${Choice} name="coating" label=${say('day_record.materials.coating')} value=${typedCoating ? OTHER : row.coating ?? ''}
        onChange=${(/** @type {string} */ coating) => put(coating === OTHER ? { coating: '', coating_other: true } : { coating, coating_other: undefined })}
        options=${[...coatings.map((one) => ({ value: one, label: one, under: as(true) })), { value: OTHER, label: say('day_record.materials.coating.other') }]} />
      ${typedCoating && field('coating', 'day_record.materials.coating_typed')}
      ${(row.gauge || row.coating) && html`<${AgainstNow} ...${{ record, areas, material: row }} />`}`}
    ${pressed('accepted')}
    ${pressed('stored')}
    ${field('quantity', 'day_record.materials.quantity')}
    ${field('coil', 'day_record.materials.coil')}
    <button type="button" class="press" data-name="material-done" onClick=${done}>✓ ${say('day_record.materials.done')}</button>
    <button type="button" class="press" data-name="material-out" onClick=${out}>${say('day_record.remove', { what: worded('what', row.what) })}</button>
  </div>`
}
