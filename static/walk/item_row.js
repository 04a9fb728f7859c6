// One item in a sheet: its question, and its answer in a word with its mark.

import { html } from '../frame/view.js'
import { pick, say } from '../words/say.js'
import { path } from '../frame/route.js'
import { answerId } from './sort_items.js'

export const RESULTS = /** @type {Record<string, string>} */ ({ pass: '✓', fail: '✕', too_close: '?', not_determinable: '?', not_applicable: '–' })

/** @param {{job: string, record: any, definition: any, item: any, place: string, station: any, press?: any, then?: string[]}} props `press`: a control under the row; `then`: the steps one came from */
export function ItemRow({ job, record, definition, item, place, station, press, then = [] }) {
  const answer = record.answers[answerId(place, definition, item)]
  const to = path('job', job, 'item', station ? 'station' : 'walk', place, definition.id, item.id, ...then)
  return html`<li class="item"><a class=${'press tall ' + (answer?.result ?? '')} href=${to} data-name="item" data-item=${item.id} data-result=${answer?.result ?? ''}>
    <span class=${'mark ' + (answer ? answer.result : 'open')} aria-hidden="true">${answer ? RESULTS[answer.result] : ''}</span>
    <span class="label">${pick(item.question)}<span class="under">${answer ? resultWords(answer) : say('item.unanswered')}${answer?.note ? ` · “${answer.note}”` : ''}</span></span>
  </a>${press}</li>`
}

/** @param {any} answer */
export function resultWords(answer) {
  return answer.verdict?.reason?.code === 'recorded' || (answer.verdict?.rule && answer.choice === null && answer.result === 'not_applicable')
    ? say('result.recorded') : say(`result.${answer.result}`)
}
