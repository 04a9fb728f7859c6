// A definition's items at one place: the quick ones together under one big press, the measured ones one by one.

import { html } from '../frame/view.js'
import { pick, say } from '../words/say.js'
import { Part } from '../frame/screen.js'
import { MainAction } from '../frame/main_action.js'
import { enterAnswer, photosOf } from './answer.js'
import { itemsFor } from '../checklist/items.js'
import { ItemRow } from './item_row.js'
import { atOnce, isQuick } from './sort_items.js'
import { judged } from './verdict.js'

/** @param {{job: string, record: any, definition: any, walk: any, station: any, person: any, locked: boolean}} props */
export function Sheet({ job, record, definition, walk, station, locked }) {
  const place = (station ?? walk).id
  const pictures = ['where', 'what'].flatMap((role) => photosOf(record, walk, station, role).slice(-1)).map((/** @type {any} */ one) => one.sha256)
  const pictured = photosOf(record, walk, station, 'what').length > 0
  const open = atOnce(record, place, { ...definition, items: itemsFor(definition, station ? record.assemblies[record.areas[station.area]?.assembly] : null) }, pictured)
  const asked = itemsFor(definition, station ? record.assemblies[record.areas[station.area]?.assembly] : null)
  const quick = asked.filter(isQuick)
  const rest = asked.filter((/** @type {any} */ item) => !isQuick(item))
  const waitsForPicture = quick.some((/** @type {any} */ item) => item.photo === 'required') && !pictured
  const allGood = async () => {
    for (const item of open) {
      await enterAnswer({ job, record, walk, station, definition, item, choice: 'pass', verdict: judged('pass'), photos: item.photo === 'required' ? pictures : [] })
    }
  }
  const rows = (/** @type {any[]} */ items) => html`<ul class="rows">${items.map((item) => html`<${ItemRow} key=${item.id} ...${{ job, record, definition, item, place, station, walk }} />`)}</ul>`
  return html`
    ${quick.length > 0 && html`<${Part} name=${pick(definition.title) ?? definition.id}>
      ${rows(quick)}
      ${!locked && open.length > 0 && html`<${MainAction} name="all-good" label=${say('sheet.all_good')} run=${allGood}
        under=${say('sheet.all_good.under', { n: open.length })} />`}
      ${!locked && waitsForPicture && html`<p>${say('sheet.picture_first')}</p>`}
      ${open.length === 0 && !waitsForPicture && html`<p class="done-bar">✓ ${say('sheet.answered')}</p>`}
    <//>`}
    ${rest.length > 0 && html`<${Part} name=${say('sheet.measured')}>${rows(rest)}<//>`}`
}
