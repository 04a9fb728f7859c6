// A stop: three minutes at the open leg of a drawn panel, one hand, gloves.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { Part, Screen } from '../frame/screen.js'
import { DAY_WATCH } from '../checklist/applies.js'
import { areaOf, revealed } from './standing.js'
import { DrawnPlaces } from './drawn_places.js'
import { LegPhoto } from './leg_photo.js'
import { Offered } from './offered.js'
import { Care } from './care.js'
import { placeLine } from './place_line.js'
import { walkToday } from './walk_today.js'

const OVER = ['looked', 'covered', 'dropped']

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props */
export function Stop({ job, record, definitions, person, rest }) {
  const lot = record.lots[rest[0]]
  const panel = Number(rest[1])
  const here = ['stop', ...rest]
  const drawn = revealed(record, lot).find((one) => one.panel === panel && (!rest[2] || one.area === rest[2]))
  const back = { back: path('job', job, 'day', lot.id), backTo: say('day') }
  if (!drawn) return html`<${Screen} title=${say('stop.sealed')} over=${record.areas[areaOf(lot)]?.name} ...${back}><p class="big">${say('stop.sealed.under')}</p><//>`
  const walk = walkToday(record, definitions, person, DAY_WATCH)
  const area = drawn.area
  const home = () => go('job', job, 'day', lot.id)
  const failed = lot.holds.some((/** @type {any} */ one) => one.panel === panel && one.why === 'failed' && one.state === 'open')
  return html`<${Screen} title=${say('stop.panel', { panel })} over=${`${record.areas[area]?.name} · ${say('stop.three')}`} ...${back}>
    <p class="big" data-name="stop-state" data-state=${drawn.state}>${say(drawn.state === 'next' ? 'stop.ahead' : `stop.state.${drawn.state}`, { panel })}</p>
    ${failed && html`<a class="press main" href=${path('job', job, 'hold', lot.id, panel, 'failed')} data-name="to-failed"><span class="label">${say('stop.failed')}</span><span class="under">${say('stop.failed.under')}</span></a>`}
    ${drawn.state === 'next' ? html`<ul class="rules">${drawn.places.map((/** @type {any} */ place) => html`<li key=${place.index}>${placeLine(place)}</li>`)}</ul>`
      : html`<${DrawnPlaces} ...${{ job, record, definitions, walk, lot, area, panel, places: drawn.places, here }} locked=${OVER.includes(drawn.state) || lot.closed} quiet=${failed} />`}
    ${walk && drawn.state !== 'next' && !lot.closed && html`<${Part} name=${say('leg')}><${LegPhoto} ...${{ job, record, person, walk, lot, panel, area }} /><//>`}
    ${drawn.state === 'due' && drawn.places.every((/** @type {any} */ place) => !place.station) && html`<${Offered} ...${{ job, record, lot, area, panel, done: home }} />`}
    <a class="press" href=${path('job', job, 'day', lot.id)} data-name="to-day">${say('stop.back')}</a>
    <${Care} />
  <//>`
}
