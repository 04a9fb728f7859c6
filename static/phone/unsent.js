// The outbox: each thing that is only on this phone, and the way out of each refusal.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { outboxItems, sendAgain } from '../outbox/items.js'
import { definitionsOf, jobRecord } from '../record/load.js'
import { sendNow } from '../sync/engine.js'
import { path } from '../frame/route.js'
import { age } from '../frame/age.js'
import { Screen } from '../frame/screen.js'
import { MainAction } from '../frame/main_action.js'
import { itemPlace } from './item_place.js'
import { Refusal } from './refusal.js'
import { useSyncStatus } from './sync_status.js'

/** A picture is two things: its bytes, and the signed entry that tells of it. @param {any} item */
function named(item) {
  if (item.what === 'photo') return `${say('kind.photo')} · ${say('unsent.bytes', { n: Math.ceil(item.size / 1024) })}`
  return say(item.kind === 'photo' ? 'unsent.photo_entry' : `kind.${item.kind}`)
}

const MARK = /** @type {Record<string, string>} */ ({ waiting: '…', refused: '✕', held: '‖', damaged: '▲' })

/** What cannot be read tells no place, and hides nothing. @param {Set<string>} jobs */
async function recordsOf(jobs) {
  /** @type {Record<string, {record: any, definitions: any[]}>} */
  const records = {}
  for (const job of jobs) {
    try {
      records[job] = { record: await jobRecord(job), definitions: await definitionsOf(job) }
    } catch { /* said where the job is opened */ }
  }
  return records
}

/** @param {any} records @param {any} item @returns {string} */
function placeOf(records, item) {
  const known = records[item.job]
  if (!known) return ''
  const job = Object.keys(records).length > 1 ? known.record.job?.name : ''
  return [job, itemPlace(known.record, known.definitions, item)].filter(Boolean).join(' · ')
}

/** @param {{tell: (invented: boolean) => void}} props */
export function Unsent({ tell }) {
  const [items, setItems] = useState(/** @type {any} */ (null))
  const [records, setRecords] = useState(/** @type {Record<string, {record: any, definitions: any[]}>} */ ({}))
  const sync = useSyncStatus()
  const read = async () => {
    const found = await outboxItems()
    setItems(found)
    setRecords(await recordsOf(new Set(found.map(({ job }) => job)))) // after the list itself: a record takes its time
  }
  useEffect(() => {
    read()
    for (const name of ['seamwalk:kept', 'seamwalk:sync']) addEventListener(name, read)
    return () => { for (const name of ['seamwalk:kept', 'seamwalk:sync']) removeEventListener(name, read) }
  }, [])
  const again = (/** @type {any} */ item) => async () => {
    await sendAgain(item)
    await read()
    sendNow()
  }
  const sentBefore = (items ?? []).filter((/** @type {any} */ item) => item.again).length
  const invented = Object.values(records).some(({ record }) => record.job?.invented)
  useEffect(() => { tell(invented) }, [invented])
  return html`<${Screen} title=${say('unsent')} back=${path('phone')} backTo=${say('phone')}>
    <${MainAction} name="send-now" label=${say('phone.send')} under=${sync} run=${sendNow} />
    ${items?.length === 0 && html`<p class="big">✓ ${say('unsent.none')}</p>`}
    <a class="press tall" href=${path('copy')} data-name="copy"><span class="label">${say('copy')}<span class="under">${say('copy.under')}</span></span><span class="go" aria-hidden="true">→</span></a>
    ${sentBefore > 0 && html`<p data-name="set-back">${say('unsent.set_back', { n: sentBefore })}</p>`}
    <ul class="rows">
      ${(items ?? []).map((/** @type {any} */ item, /** @type {number} */ at) => html`<li key=${item.what + item.name} class="row" data-state=${item.state}>
        <strong id=${`item-${at}`}>${at + 1} · ${named(item)}</strong>
        ${placeOf(records, item) && html`<span data-name="item-place">${placeOf(records, item)}</span>`}
        <span>${age(item.at)} · <span aria-hidden="true">${MARK[item.state] ?? '…'}</span> ${say(`unsent.${item.state}`)}</span>
        ${item.refusal && html`<div class="problem">
          <${Refusal} refusal=${item.refusal} />
          <button type="button" class="press" data-name="again" id=${`again-${at}`} aria-labelledby=${`again-${at} item-${at}`}
            onClick=${again(item)}>${say('unsent.again')}</button>
        </div>`}
      </li>`)}
    </ul>
  <//>`
}
