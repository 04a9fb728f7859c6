// The job's drawn roof: all areas together from above, then each as a line to open it by.

import { html, useMemo } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { number } from '../words/number.js'
import { shown } from '../frame/amount.js'
import { Folded } from '../frame/folded.js'
import { Part } from '../frame/screen.js'
import { fitted } from '../roof/fitted.js'
import { Legend } from '../roof/legend.js'
import { useLaid } from '../roof/layouts.js'
import { sorted } from '../roof/order.js'
import { RoofPlan } from '../roof/roof_plan.js'
import { statesOf } from '../roof/state.js'

const FEW = 3 // areas that stand on the screen one by one: more are found on the plan, or behind their heading
const DRAW = ['administrator', 'inspector', 'foreman']

/** @param {{job: string, record: any, definitions: any[], person: any}} props */
export function RoofPart({ job, record, definitions, person }) {
  const areas = useMemo(() => sorted(record.areas, 'name'), [record.areas])
  const states = useMemo(() => statesOf(record, definitions), [record, definitions])
  const layouts = useLaid('layout', record, areas)
  const stations = Object.values(record.stations)
  const places = placesReached(stations)
  const list = () => html`<div class="roof list">${areas.map((area, i) => html`<a key=${area.id} class="press tall bay-row" href=${path('job', job, 'area', area.id)} data-name="area">
    <span class="mark" aria-hidden="true">${i + 1}</span><span class="label">${area.name}${area.narrow ? html`<span class="under">${say('area.narrow.short')}</span>` : html`<span class="under">${areaLine(area, layouts[area.id], places[area.id] ?? 0)}</span>
    <span class="under" data-name="fit-state">${say('fit')}: ${fitted(record, area).mark} ${fitted(record, area).text}</span>`}</span><span class="go" aria-hidden="true">→</span></a>`)}</div>`
  return html`<${Part} name=${say('job.roof')}>
    ${areas.length === 0 ? html`<p class="big">${say('job.no_area')}</p>` : html`
      <${RoofPlan} ...${{ record, areas, states, stations }} tallest=${Math.max(300, innerHeight * 0.5)} onLook=${(/** @type {string} */ area) => go('job', job, 'plan', area)} />
      <a class="press tall" href=${path('job', job, 'plan')} data-name="plan"><span class="label">${say('plan.open')}<span class="under">${say('plan.open.under')}</span></span><span class="go" aria-hidden="true">→</span></a>
      <details><summary class="press" data-name="signs">${say('plan.signs')}</summary><${Legend} /></details>
      ${areas.length > FEW ? html`<${Folded} id="areas" name=${say('job.areas')} n=${areas.length}>${list()}<//>` : list()}`}
    ${DRAW.includes(person.role) && html`<a class="press" href=${path('job', job, 'draw')} data-name="add-area">${say('job.add_area')}</a>`}
  <//>`
}

/** By area: a place looked at twice is one place, one that nobody reached is none. @param {any[]} stations @returns {Record<string, number>} */
function placesReached(stations) {
  const each = new Map(stations.filter((one) => one.reached === 'yes').map((one) => [`${one.area}/${one.panel}/${one.from_low_end.value} ${one.from_low_end.unit}`, one.area]))
  /** @type {Record<string, number>} */
  const places = {}
  for (const area of each.values()) places[area] = (places[area] ?? 0) + 1
  return places
}

/** @param {any} area @param {any} layout @param {number} places */
function areaLine(area, layout, places) {
  const counted = layout?.panels ? Object.values(layout.stations).reduce((sum, n) => sum + n, 0) : null
  return [say('area.panels', { n: area.panel_count ?? '—' }), number(area.panel_length?.value, area.panel_length?.unit), shown(area.slope),
    counted === null ? say('area.places', { n: places }) : say('plan.places.of', { n: places, of: counted })].join(' · ')
}
