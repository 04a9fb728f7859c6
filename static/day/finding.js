// What failed at a held panel: the question, where, and the way to its sheet to look again.

import { html } from '../frame/view.js'
import { pick, say } from '../words/say.js'
import { path } from '../frame/route.js'
import { findItem } from '../checklist/items.js'
import { placeLine } from './place_line.js'

/** @param {{job: string, record: any, definitions: any[], answer: any, here: string[]}} props */
export function Finding({ job, record, definitions, answer, here }) {
  const definition = definitions.find((one) => one.digest === answer.definition)
  const station = record.stations[answer.station]
  return html`<li><a class="press tall fail" href=${path('job', job, 'station', station.id, ...here)} data-name="failed-place">
    <span class="mark fail" aria-hidden="true">✕</span>
    <span class="label">${pick(findItem(definition, answer.item)?.question) ?? answer.item}<span class="under">${placeLine(station)}${answer.note ? ` · “${answer.note}”` : ''} · ${say('failed.again')}</span></span></a></li>`
}
