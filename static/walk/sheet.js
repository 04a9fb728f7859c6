// A definition's items at one place: the quick ones together under one big press, each critical look with its own
// press, the measured ones one by one.

import { html } from '../frame/view.js'
import { pick, say } from '../words/say.js'
import { isQuick } from '../checklist/items.js'
import { Part } from '../frame/screen.js'
import { MainAction } from '../frame/main_action.js'
import { enterAnswer } from './answer.js'
import { picturesOf } from './pictures.js'
import { ItemRow } from './item_row.js'
import { answerId, asked, atOnce, isLook } from './sort_items.js'
import { judged } from './verdict.js'

/** @param {{job: string, record: any, definition: any, walk: any, station: any, person: any, locked: boolean, then?: string[]}} props `then`: the steps one came from, for the way back */
export function Sheet({ job, record, definition, walk, station, locked, then }) {
  const place = (station ?? walk).id
  const items = asked(record, definition, walk, station)
  const open = atOnce(record, definition, walk, station)
  const groups = [items.filter(isQuick), items.filter((item) => isLook(item) && !isQuick(item)), items.filter((item) => !isLook(item) && !isQuick(item))]
  const area = !station && walk.areas.length === 1 ? walk.areas[0] : undefined
  const pictures = (/** @type {any} */ item) => picturesOf(record, walk, station, answerId(place, definition, item))
  const pass = (/** @type {any} */ item) => enterAnswer({ job, record, walk, station, area, definition, item, choice: 'pass', verdict: judged('pass'),
    photos: item.photo === 'required' ? pictures(item) : [] })
  const allGood = async () => {
    for (const item of open) await pass(item)
  }
  const row = (/** @type {any} */ item, /** @type {any} */ press = null) => html`<${ItemRow} key=${item.id} ...${{ job, record, definition, item, place, station, press, then }} />`
  const onePress = (/** @type {any} */ item) => {
    if (locked || record.answers[answerId(place, definition, item)]) return null
    if (item.photo === 'required' && !pictures(item).length) return html`<p class="hint">${say('sheet.picture_first')}</p>`
    return html`<button type="button" class="press as-approved" data-name="as-approved" data-item=${item.id} aria-label=${`${say('item.pass')}: ${pick(item.question)}`}
      onClick=${() => pass(item)}><span aria-hidden="true">✓</span> ${say('item.pass')}</button>`
  }
  return html`<${Part} name=${pick(definition.title) ?? definition.id}>
    ${!locked && html`<details class="cautions"><summary class="press" data-name="cautions">▲ ${say('sheet.cautions')}</summary>
      <ul class="rules">${definition.cautions.map((/** @type {any} */ one, /** @type {number} */ n) => html`<li key=${n}>${pick(one)}</li>`)}</ul></details>`}
    ${groups[0].length > 0 && html`
      <ul class="rows">${groups[0].map((item) => row(item))}</ul>
      ${!locked && open.length > 0 && html`<${MainAction} name="all-good" label=${say('sheet.all_good')} run=${allGood} under=${say('sheet.all_good.under', { n: open.length })} />`}
      ${open.length === 0 && html`<p class="done-bar">✓ ${say('sheet.answered')}</p>`}`}
    ${groups[1].length > 0 && html`<h3>${say('sheet.looked')}</h3><ul class="rows">${groups[1].map((item) => row(item, onePress(item)))}</ul>`}
    ${groups[2].length > 0 && html`<h3>${say('sheet.measured')}</h3><ul class="rows">${groups[2].map((item) => row(item))}</ul>`}
  <//>`
}
