// One finding: where it is, what was asked, and that it is open.

import { html } from '../frame/view.js'
import { pick, say } from '../words/say.js'
import { path } from '../frame/route.js'
import { findItem } from '../checklist/items.js'
import { placeName } from '../roof/names.js'

/** @param {{job: string, record: any, definitions: any[], finding: any}} props */
export function Finding({ job, record, definitions, finding }) {
  const answer = record.answers[finding.id]
  const definition = definitions.find((one) => one.digest === finding.definition) // two checklists may name an item alike
  const item = findItem(definition, finding.item)
  const station = finding.station && record.stations[finding.station]
  const to = station ? path('job', job, 'station', station.id) : path('job', job, 'walk', finding.walk)
  return html`<li><a class="press tall fail" href=${to}>
    <span class="label"><span aria-hidden="true">✕ </span>${say('finding.open')}: ${pick(item?.question) ?? finding.item}
      <span class="under">${station ? placeName(record, station) : say('walk.whole')}${answer?.note ? ` · “${answer.note}”` : ''}</span></span>
    <span class="go" aria-hidden="true">→</span></a></li>`
}
