// One crew's front: the state large, then the one next thing, then what was set.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { DayRecordLine } from '../day_record/line.js'
import { LegPhoto } from './leg_photo.js'
import { lotWords } from './lot_words.js'
import { Mark } from './mark.js'
import { placeLine } from './place_line.js'
import { Sealed } from './sealed.js'
import { areaOf, plannedTo, standing } from './standing.js'

const SIGNS = { hold: '■', stop: '◆', go: '→', start: '→' }

/** @param {{job: string, record: any, definitions: any[], person: any, lot: any, walk: any}} props `walk`: today's, or null */
export function Front({ job, record, person, lot, walk }) {
  const { state, held, due, next, ahead } = standing(record, lot)
  const night = held?.why === 'night'
  const hold = held && (night ? ['night', lot.id] : ['hold', lot.id, held.panel, held.why])
  const first = hold ?? (state === 'stop' ? ['stop', lot.id, due.panel] : null)
  const why = held ? say(`day.held.${held.why}`) : due ? say('day.due') : next ? say('day.next', { panel: next.panel }) : state === 'go' ? say('day.no_stop') : ''
  const wanted = (lot.rolling?.due ?? []).filter((/** @type {number} */ panel) => lot.placed_to !== null && panel <= lot.placed_to)
  const further = lot.extra?.length > 0 || (lot.placed_to ?? 0) >= plannedTo(record, lot)
  return html`<section class="part front" data-name="front" data-state=${state}>
    <h2>${record.areas[areaOf(lot)]?.name ?? '—'} · ${lot.crew}</h2>
    <div class=${`day-state ${state}`} role="status">
      <p class="day-set">${lot.placed_to === null ? say('day.none_set') : say('day.set', { to: lot.placed_to })}</p>
      <p class="day-word"><span aria-hidden="true">${SIGNS[state]}</span> ${say(`day.${state}`, { panel: held?.panel ?? due?.panel ?? '' })}</p>
      <p>${why}</p>
      ${!held && !due && next && html`<ul class="day-places">${next.places.map((/** @type {any} */ place) => html`<li key=${place.index}>${placeLine(place)}</li>`)}</ul>`}
      ${ahead && html`<p class="day-ahead">${say('day.ahead', { panel: ahead.panel, why: say(`day.why.${ahead.why}`) })}</p>`}
    </div>
    ${first && html`<a class="press main" href=${path('job', job, ...first)} data-name=${hold ? 'to-hold' : 'to-stop'}>
      <span class="label">${say(hold ? 'day.to_hold' : 'day.to_stop', { panel: (held ?? due).panel })}</span>
      <span class="under">${say(night ? 'night.ten.short' : hold ? 'day.to_hold.under' : 'stop.three')}</span></a>`}
    ${!night && html`<${Mark} ...${{ job, record, person, lot, walk }} plain=${Boolean(first)} />`}
    ${wanted.map((/** @type {number} */ panel) => (walk ? html`<${LegPhoto} key=${panel} ...${{ job, record, person, walk, lot, panel }} />`
      : html`<a key=${panel} class="press tall" href=${path('job', job, 'start', 'then', 'day', lot.id)} data-name="leg-start"><span class="label">${say('leg.panel', { panel })}<span class="under">${say('leg.start')}</span></span></a>`))}
    ${further && html`<a class="press tall" href=${path('job', job, 'day', 'plan', lot.id)} data-name="plan-further"><span class="label">${say('day.further')}<span class="under">${say('day.further.under')}</span></span></a>`}
    ${lot.placed_to !== null && !night && html`<a class="press tall" href=${path('job', job, 'night', lot.id)} data-name="to-night"><span class="label">${say('night.to')}<span class="under">${say('night.ten.short')}</span></span></a>`}
    <${Sealed} ...${{ job, record, lot }} />
    <${DayRecordLine} ...${{ job, record }} day=${lot.day} crew=${lot.crew} />
    <a class="press" href=${path('job', job, 'lot', lot.id)} data-name="to-lot">${lotWords(record, lot)} →</a>
  </section>`
}
