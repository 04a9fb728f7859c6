// Lists in a survey: substitutions, changes, samples with the hands that held them. Each row can be left out again.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { Choice } from '../frame/choice.js'
import { TextField } from '../frame/text_field.js'
import { Shots } from '../finding/shots.js'
import { CHANGE, HAND, SAMPLE, SUBSTITUTION } from './body.js'
import { DayField } from './day_field.js'

/** @typedef {(patch: any) => Promise<any>} Change */
/** @typedef {{rows: any[], name: string, change: Change}} List */

/** The change of one row of a list. @param {Change} change @param {string} name @param {number} at @returns {Change} */
function rowOf(change, name, at) {
  return (patch) => change((/** @type {any} */ now) => ({ [name]: now[name].map((/** @type {any} */ row, /** @type {number} */ n) => (n === at ? { ...row, ...(typeof patch === 'function' ? patch(row) : patch) } : row)) }))
}

/** @param {{name: string, at: number, change: Change}} props */
function LeaveOut({ name, at, change }) {
  return html`<button type="button" class="press" data-name=${`out-${name}`} onClick=${() => change((/** @type {any} */ now) => ({ [name]: now[name].filter((/** @type {any} */ _, /** @type {number} */ n) => n !== at) }))}>${say('survey.row.leave_out')}</button>`
}

/** @param {{name: string, label: string, row: any, change: Change}} props */
function Add({ name, label, row, change }) {
  return html`<button type="button" class="press" data-name=${`add-${name}`} onClick=${() => change((/** @type {any} */ now) => ({ [name]: [...now[name], { ...row }] }))}>+ ${label}</button>`
}

/** @param {{id: string, member: string, label: string, row: any, put: Change, lines?: number}} props */
function Text({ id, member, label, row, put, lines }) {
  return html`<${TextField} name=${`${id}-${member}`} lines=${lines} label=${label} value=${row[member]} onChange=${(/** @type {string} */ value) => put({ [member]: value })} />`
}

/** @param {{rows: any[], change: Change}} props */
export function Substitutions({ rows, change }) {
  return html`${rows.map((row, at) => html`<div key=${at} class="statement stack" data-name="substitution"><${Text} id=${`sub-${at}`} member="what" label=${say('survey.substitution.what')} row=${row} put=${rowOf(change, 'substitutions', at)} />
    <${Text} id=${`sub-${at}`} member="agreed_by" label=${say('survey.substitution.agreed_by')} row=${row} put=${rowOf(change, 'substitutions', at)} /><${LeaveOut} name="substitutions" ...${{ at, change }} /></div>`)}
    <${Add} name="substitutions" label=${say('survey.substitution.add')} row=${SUBSTITUTION} change=${change} />`
}

/** @param {{rows: any[], change: Change}} props */
export function Changes({ rows, change }) {
  return html`${rows.map((row, at) => {
    const put = rowOf(change, 'changes', at)
    return html`<div key=${at} class="statement stack" data-name="change">
      <${Choice} name=${`change-${at}-what`} label=${say('survey.changes.what')} value=${row.what} onChange=${(/** @type {string} */ what) => put({ what })} options=${['equipment', 'traffic', 'repair', 'coating', 'other'].map((one) => ({ value: one, label: say(`survey.change.${one}`) }))} />
      <${Text} id=${`change-${at}`} member="said" lines=${2} label=${say('survey.changes.said')} row=${row} put=${put} />
      <${Text} id=${`change-${at}`} member="by" label=${say('survey.changes.by')} row=${row} put=${put} />
      <${DayField} name=${`change-${at}-day`} label=${say('survey.changes.day')} value=${row.day} onChange=${(/** @type {string} */ day) => put({ day })} />
      <${LeaveOut} name="changes" ...${{ at, change }} /></div>`
  })}
    <${Add} name="changes" label=${say('survey.changes.add')} row=${CHANGE} change=${change} />`
}

/** @param {{job: string, rows: any[], change: Change}} props */
export function Samples({ job, rows, change }) {
  return html`${rows.map((row, at) => {
    const put = rowOf(change, 'samples', at)
    const id = `sample-${at}`
    return html`<div key=${at} class="statement stack" data-name="sample">
      <${Text} ...${{ id, row, put }} member="bag" label=${say('survey.sample.bag')} />
      <${Text} ...${{ id, row, put }} member="what" lines=${2} label=${say('survey.sample.what')} />
      <${Text} ...${{ id, row, put }} member="taken_by" label=${say('survey.sample.taken_by')} />
      <${DayField} name=${`${id}-day`} label=${say('survey.sample.day')} value=${row.day} onChange=${(/** @type {string} */ day) => put({ day })} />
      ${row.custody.map((/** @type {any} */ hand, /** @type {number} */ n) => html`<${Hand} key=${n} id=${`${id}-hand-${n}`} hand=${hand} put=${rowOf(put, 'custody', n)} />`)}
      <${Add} name="custody" label=${say('survey.sample.hand')} row=${{ ...HAND, from: row.custody.at(-1)?.to ?? row.taken_by }} change=${put} />
      <${Shots} job=${job} draft=${row} change=${put} role="label" />
      <${LeaveOut} name="samples" ...${{ at, change }} /></div>`
  })}
    <${Add} name="samples" label=${say('survey.sample.add')} row=${SAMPLE} change=${change} />`
}

/** @param {{id: string, hand: any, put: Change}} props */
function Hand({ id, hand, put }) {
  return html`<div class="stack" data-name="hand"><${Text} ...${{ id, put }} row=${hand} member="to" label=${say('survey.custody.to')} />
    <${DayField} name=${`${id}-day`} label=${say('survey.custody.day')} value=${hand.day} onChange=${(/** @type {string} */ day) => put({ day })} />
    <${Text} ...${{ id, put }} row=${hand} member="kept" label=${say('survey.custody.kept')} /></div>`
}
