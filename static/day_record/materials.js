// Materials received: what came, its label photographed and held to the approval, what was done with it.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { Choice } from '../frame/choice.js'
import { Against } from './against.js'
import { Material, summary } from './material.js'
import { NONE, PRESSED } from './pressed.js'
import { worded } from './there.js'

/** @param {{job: string, record: any, areas: string[], draft: any, change: (patch: any) => any}} props */
export function Materials({ job, record, areas, draft, change }) {
  const rows = draft.materials
  const none = rows.length === 1 && rows[0].what === NONE
  const add = (/** @type {string} */ what) => change((/** @type {any} */ now) => ({ materials: [...(none ? [] : now.materials), { what, quantity: '', accepted: '', stored: '', photos: [] }], open: none ? 0 : now.materials.length }))
  const put = (/** @type {number} */ at) => (/** @type {any} */ patch) => change((/** @type {any} */ now) => ({ waiting: '', materials: now.materials.map((/** @type {any} */ row, /** @type {number} */ n) => (n === at ? { ...row, ...(typeof patch === 'function' ? patch(row) : patch) } : row)) }))
  const out = (/** @type {number} */ at) => change((/** @type {any} */ now) => ({ open: -1, materials: now.materials.filter((/** @type {any} */ _, /** @type {number} */ n) => n !== at) }))
  return html`
    ${!none && rows.map((/** @type {any} */ row, /** @type {number} */ at) => (at === draft.open
      ? html`<${Material} key=${at} ...${{ job, record, areas, row }} waiting=${draft.waiting === 'label'} wait=${(/** @type {boolean} */ on) => change({ waiting: on ? 'label' : '' })} put=${put(at)} out=${() => out(at)} done=${() => change({ open: -1 })} />`
      : html`<button key=${at} type="button" class="press tall" data-name="material" onClick=${() => change({ open: at })}><span class="label">${worded('what', row.what)}<span class="under">${summary(row)}</span></span><span class="go" aria-hidden="true">→</span></button>`))}
    <${Choice} name="material-what" label=${say('day_record.materials.add')} value="" onChange=${add} options=${PRESSED.what.map((one) => ({ value: one, label: say(`day_record.what.${one}`) }))} />`
}

/** Materials as they were written, each with what its label was held to. @param {{record: any, rows: any[]}} props */
export function MaterialsTold({ record, rows }) {
  return rows.map((row, n) => html`<div key=${n} class="stack"><p><strong>${worded('what', row.what)}</strong> ${summary(row)}</p><${Against} ...${{ record, compared: row.compared ?? [] }} /></div>`)
}
