// An open walk: the roof to pick places on, the places so far, what is asked of the whole walk, and its close.

import { html } from '../frame/view.js'
import { pick, say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { shown } from '../frame/amount.js'
import { clock } from '../frame/age.js'
import { usePeople } from '../frame/people.js'
import { signer } from '../frame/signer.js'
import { Part, Screen } from '../frame/screen.js'
import { Facts } from '../frame/facts.js'
import { DoubtsHere } from '../doubt/part.js'
import { Plan } from '../roof/plan.js'
import { Legend } from '../roof/legend.js'
import { PlaceList } from '../roof/place_list.js'
import { rounded } from '../roof/pick.js'
import { sorted } from '../roof/order.js'
import { forWalk } from '../checklist/applies.js'
import { Sheet } from './sheet.js'
import { TapsToMake } from './taps_to_make.js'

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props */
export function Walk({ job, record, definitions, person, rest }) {
  const walk = record.walks[rest[0]]
  const people = usePeople(job)
  const own = definitions.find((one) => one.digest === walk.definition)
  const oneArea = own?.per === 'area' // asked of the area itself: no places to pick
  const closed = Boolean(walk.signoff)
  const open = !closed && walk.by === person.id
  const areas = sorted(record.areas, 'name').filter((one) => walk.areas.includes(one.id))
  const picked = (/** @type {any} */ area) => (/** @type {number} */ panel, /** @type {number} */ at) => go('job', job, 'place', walk.id, area.id, panel, rounded(at, area.outline.unit))
  return html`<${Screen} title=${pick(own?.title) ?? say('walk')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name} wide>
    ${closed && html`<p class="done-bar">✓ ${say('walk.signed_by', { name: signer(people, walk.signoff), at: clock(walk.signoff.at) })}</p>`}
    ${open && !oneArea && areas.length > 0 && html`<a class="press main" href=${path('job', job, 'place', walk.id, ...(areas.length === 1 ? [areas[0].id] : []))} data-name="new-place">
      <span class="label">${say('walk.new_place')}</span><span class="under">${say('walk.or_tap')}</span></a>`}
    ${open && drawnFor(record, walk).map((/** @type {any} */ lot) => html`<a key=${lot.id} class="press main plain" href=${path('job', job, 'audit', lot.id)} data-name="drawn">
      <span class="label">${say('audit.panels')}</span><span class="under">${say('audit.drawn', { n: lot.n, size: lot.size, places: lot.places })}</span></a>`)}
    <${Part} name=${say('job.roof')}>
      <div class="roof">${areas.map((/** @type {any} */ area) => html`<div key=${area.id} class="bay">
        <h3>${area.name}</h3>
        <${Plan} ...${{ record, definitions, area }} only=${walk.id} tallest=${340} onPick=${open && !oneArea ? picked(area) : undefined} />
      </div>`)}</div>
      <${Legend} />
    <//>
    <${TapsToMake} ...${{ job, record, definitions, walk }} />
    <${DoubtsHere} ...${{ job, record }} kind="walk" id=${walk.id} />
    ${!oneArea && html`<${Part} name=${say('walk.places')}>
      <${PlaceList} ...${{ job, record, definitions }} wanted=${(/** @type {any} */ one) => one.walk === walk.id} />
    <//>`}
    ${forWalk(walk, definitions).map((definition) => html`<${Sheet} key=${definition.id} ...${{ job, record, definition, walk, person, station: null, locked: !open }} />`)}
    <${Part} name=${say('walk.day')}>
      <${Facts} rows=${[[say('walk.began'), clock(walk.at)], 
        walk.metal_temperature ? [say('walk.metal'), `${shown(walk.metal_temperature)} ± ${shown(walk.metal_uncertainty)}`] : [say('walk.stood'), say(`walk.stood.${walk.fall_protection}`)],
        [say('walk.sky'), say(`sky.${walk.weather?.sky}`)], [say('walk.wind'), say(`wind.${walk.weather?.wind}`)], [say('walk.crew'), walk.crew],
        [say('walk.laid'), (walk.placed ?? []).map((/** @type {any} */ one) => say('walk.laid.row', { ...one, area: record.areas[one.area]?.name ?? '—' })).join('; ')]]} />
      ${open && html`<a class="press" href=${path('job', job, 'start', walk.id)}>${say('walk.correct')}</a>`}
    <//>
    ${open && html`<a class="press" href=${path('job', job, 'new-finding', 'walk', walk.id)} data-name="new-finding"><span class="label">${say('findings.new')}</span></a>`}
    ${open && html`<a class="press main plain" href=${path('job', job, 'sign', walk.id)} data-name="sign"><span class="label">${say('walk.sign')}</span></a>`}
  <//>`
}

/** Audits and reworks with panels yet to be looked at, all on this walk's areas. @param {any} record @param {any} walk @returns {any[]} */
function drawnFor(record, walk) {
  return Object.values(record.lots ?? {}).filter((/** @type {any} */ lot) => lot.purpose !== 'work' && !lot.closed
    && lot.population.every((/** @type {any} */ row) => walk.areas.includes(row.area)))
}
