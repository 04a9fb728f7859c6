// The roof plan: area, then panel, then place. Every tap has a button that does the same.

import { html, useMemo, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { Part, Screen } from '../frame/screen.js'
import { Choice } from '../frame/choice.js'
import { Legend } from './legend.js'
import { HatchLegend, STATES, zoneHatch } from './hatches.js'
import { useLaid } from './layouts.js'
import { NarrowPart } from './narrow.js'
import { zoneName } from './names.js'
import { sorted } from './order.js'
import { PanelCard } from './panel_card.js'
import { RoofPlan } from './roof_plan.js'
import { shownSample } from './sample.js'
import { statesOf } from './state.js'
import { Tally, Whole } from './tally.js'

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props `rest`: an area and a panel to look at */
export function PlanScreen({ job, record, definitions, person, rest }) {
  const areas = useMemo(() => sorted(record.areas, 'name'), [record.areas])
  const states = useMemo(() => statesOf(record, definitions), [record, definitions])
  const [show, setShow] = useState('state')
  const looked = record.areas[rest[0]] ? rest[0] : null
  const area = looked && record.areas[looked]
  const panel = Number(rest[1]) || null
  const layouts = useLaid('layout', record, areas)
  const zones = useLaid('zones', record, areas, show === 'zones')
  const legs = useLaid('stations', record, area ? [area] : [], Boolean(area))
  const onLook = (/** @type {string} */ one, /** @type {any} */ place) => go('job', job, 'plan', one, ...(one === looked && place ? [place.panel] : []))
  const unplaced = areas.filter((one) => !one.place).length
  const assembly = area && record.assemblies[area.assembly]
  return html`<${Screen} title=${say('plan')} over=${record.job.name} back=${path('job', job)} backTo=${record.job.name} wide>
    <div class="plan-beside"><div class="stack plan-drawn">
      <${RoofPlan} ...${{ record, areas, show, zones, looked, panel, onLook, states }} legs=${area ? legs[area.id] : null} stations=${Object.values(record.stations)} tallest=${Math.max(340, innerHeight * 0.6)} pad />
    </div><div class="stack plan-told">
      ${area && html`<${Part} name=${area.name}>
        ${area.narrow ? html`<${NarrowPart} ...${{ job, record, definitions, person, area }} />` : html`<${PanelCard} ...${{ job, record, definitions, person, area, panel }} legs=${legs[area.id]} />
        <${Tally} layout=${area.id in layouts ? layouts[area.id] : undefined} ...${{ assembly, area }} />`}
        <a class="press main" href=${path('job', job, 'area', area.id)} data-name="open-area"><span class="label">${say('plan.open_area', { area: area.name })}</span></a>
      <//>`}
      ${!area && html`<${Part} name=${say('plan.counts.job')}><${Whole} ...${{ layouts, areas }} /><//>`}
    </div><div class="stack plan-legend">
      <p class="hint">${say('plan.drag')}</p>
      ${unplaced > 0 && areas.length > unplaced && html`<p class="hint">${say('plan.unplaced', { n: unplaced })}</p>`}
      <div class="forms"><${Choice} name="show" label=${say('plan.show')} value=${show} onChange=${setShow} options=${['state', 'zones'].map((one) => ({ value: one, label: say(`plan.show.${one}`) }))} /></div>
      ${show === 'zones' ? html`<${ZoneLegend} ...${{ record, areas }} />` : html`<${StateLegend} ...${{ record, areas }} />`}
      <${Legend} />
      <${Choice} name="plan-area" label=${say('plan.area')} value=${looked ?? ''} onChange=${(/** @type {string} */ one) => go('job', job, 'plan', ...(one ? [one] : []))}
        options=${[{ value: '', label: say('plan.area.none') }, ...areas.map((one, i) => ({ value: one.id, label: `${i + 1}: ${one.name}` }))]} />
    </div></div>
  <//>`
}

/** States that stand on this roof. @param {{record: any, areas: any[]}} props */
function StateLegend({ record, areas }) {
  const there = new Set(areas.flatMap((area) => (record.coverage?.[area.id]?.runs ?? []).map((/** @type {any} */ run) => run.state)))
  const rows = Object.keys(STATES).filter((state) => there.has(state)).map((state) => ({ name: state, sign: STATES[state], words: say(`coverage.${state}`) }))
  const sample = areas.some((area) => shownSample(record, area.id).length)
  const narrow = areas.filter((area) => area.narrow).map((area) => area.name).join(', ')
  return html`${rows.length > 0 && html`<${HatchLegend} rows=${rows} label=${say('plan.show.state')} />`}
    ${narrow && html`<p data-name="narrow-on-plan">${say('area.narrow.on_plan', { areas: narrow, short: say('area.narrow.short') })}</p>`}
    ${sample && html`<p><span aria-hidden="true">▽</span> ${say('plan.sample')}</p>`}`
}

/** @param {{record: any, areas: any[]}} props */
function ZoneLegend({ record, areas }) {
  const names = [...new Set(areas.flatMap((area) => (record.assemblies[area.assembly]?.zones ?? []).map((/** @type {any} */ one) => one.name)))]
  const told = areas.filter((area) => area.zone_map)
  return html`<${HatchLegend} rows=${names.map((zone) => ({ name: zoneHatch(zone, names), words: zoneName(zone) }))} label=${say('plan.show.zones')} />
    <ul class="rows">${[...new Set(told.map((area) => area.zone_map.state))].map((state) => html`<li key=${state}>${say(`draw.zones.${state}`)}: ${told.filter((area) => area.zone_map.state === state).map((area) => area.name).join(', ')}</li>`)}
      ${told.length < areas.length && html`<li>${say('draw.zones.none')}: ${areas.filter((area) => !area.zone_map).map((area) => area.name).join(', ')}</li>`}</ul>`
}
