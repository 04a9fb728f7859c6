// The wind zones of the area: proposed by strips along its edges, then confirmed or redrawn as the engineer drew them.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Part, Screen } from '../frame/screen.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { TextField } from '../frame/text_field.js'
import { HatchLegend, zoneHatch } from '../roof/hatches.js'
import { zoneName } from '../roof/names.js'
import { areaBody, whole } from './body.js'
import { Faults, useLayout } from './checks.js'
import { Board } from './board.js'
import { Inner } from './inner.js'
import { scene } from './shape.js'
import { Offer } from './offer.js'
import { KINDS, box, numbers, text } from './outline.js'
import { rectangle } from './rectangle.js'
import { Stations } from './stations.js'
import { Which } from './which.js'
import { useDrawing } from './use_drawing.js'

const OUTER = ['eave', 'ridge', 'rake', 'hip'] // where wind meets the roof: our proposal, which the engineer's replaces

/** @param {{job: string, record: any, person: any, rest: string[]}} props */
export function Zones({ job, record, person, rest }) {
  const drawing = useDrawing({ job, record, person, rest })
  const { draft, make } = drawing
  const [at, setAt] = useState(0)
  const assembly = draft && record.assemblies[draft.assembly]
  const layout = useLayout(draft && whole(draft) && !draft.laying ? areaBody(draft, record) : null, assembly)
  const runs = useLayout(draft && draft.zone_state && whole(draft) && !draft.laying ? areaBody(draft, record) : null, assembly, 'zones')
  if (!draft) return null
  const set = (/** @type {string} */ name) => (/** @type {any} */ value) => make({ [name]: value }, name)
  const kinds = KINDS.filter((kind) => draft.edges.includes(kind) || (kind === 'penetration' && draft.openings.length))
  const width = (/** @type {string} */ kind) => (/** @type {string | null} */ value) => make((/** @type {any} */ old) => ({ zone_state: old.zone_state || 'proposed', zone_widths: { ...old.zone_widths, [kind]: value } }), `zone/${kind}`)
  const take = (/** @type {string} */ value, /** @type {string} */ standard) => make((/** @type {any} */ old) => ({
    zone_state: 'proposed', zone_standard: standard, zone_widths: { ...old.zone_widths, ...Object.fromEntries(OUTER.map((kind) => [kind, value])) } }))
  const names = (assembly?.zones ?? []).map((/** @type {any} */ one) => one.name)
  const here = draft.zone_drawn[at] ? at : draft.zone_drawn.length - 1
  const add = () => {
    const { left, low, width: wide, height } = box(numbers(draft.points))
    const points = rectangle(text(left), text(low), text(Math.round(wide / 4) || wide / 4), text(Math.round(height / 4) || height / 4))
    make((/** @type {any} */ old) => ({ zone_state: 'redrawn', zone_drawn: [...old.zone_drawn, { zone: names[0] ?? 'field', points }] }))
    setAt(draft.zone_drawn.length)
  }
  const pickZone = (/** @type {string} */ zone) => make((/** @type {any} */ old) => ({ zone_drawn: old.zone_drawn.map((/** @type {any} */ one, /** @type {number} */ i) => (i === here ? { ...one, zone } : one)) }))
  return html`<${Screen} title=${say('draw.zones')} over=${draft.name} back=${path('job', job, 'draw', rest[0])} backTo=${say('draw.back')} wide>
    <p class="big">${say('draw.zones.engineer')}</p>
    ${draft.points.length > 2 && !draft.laying && html`<${Board} ...${scene(draft)} ...${{ names }} zones=${runs} active=${0} selected=${null} onSelect=${() => {}} onMove=${() => {}} still />
      <${HatchLegend} rows=${names.map((/** @type {string} */ zone) => ({ name: zoneHatch(zone, names), words: zoneName(zone) }))} label=${say('draw.zones')} />`}
    <${Offer} ...${{ record, take, unit: draft.unit }} />
    <${Part} name=${say('draw.zones.widths')}>
      <p class="hint">${say('draw.zones.widths.what')}</p>
      ${kinds.map((kind) => html`<${Stepper} key=${kind} name=${`strip-${kind}`} label=${say(`edge.${kind}`)} unit=${draft.unit} steps=${draft.unit === 'm' ? [0.1, 1] : [0.5, 1]} low=${0} high=${500}
        value=${kind in draft.zone_widths ? draft.zone_widths[kind] : '0'} onChange=${width(kind)} onWrong=${() => width(kind)(null)} />`)}
      <${Stations} layout=${layout} />
    <//>
    <${Part} name=${say('draw.zones.drawn')}>
      <${Which} names=${draft.zone_drawn.map((/** @type {any} */ one, /** @type {number} */ i) => `${i + 1}: ${zoneName(one.zone)}`)} at=${here} onPick=${setAt} onAdd=${draft.points.length > 2 ? add : null} label=${say('draw.zones.drawn')} addLabel=${say('draw.zones.add')} />
      ${here >= 0 && html`<${Choice} name="drawn-zone" label=${say('place.zone')} value=${draft.zone_drawn[here].zone} onChange=${pickZone} options=${names.map((/** @type {string} */ one) => ({ value: one, label: zoneName(one) }))} />
        <${Inner} key=${here} ...${{ drawing }} list="zone_drawn" at=${here} />
        <button type="button" class="press" data-name="remove-zone" onClick=${() => make((/** @type {any} */ old) => ({ zone_drawn: old.zone_drawn.filter((/** @type {any} */ _, /** @type {number} */ i) => i !== here) }))}>${say('draw.zones.remove')}</button>`}
    <//>
    <${Part} name=${say('draw.zones.who')}>
      <${Choice} name="zone-state" label=${say('draw.zones.state')} value=${draft.zone_state} onChange=${set('zone_state')} options=${['proposed', 'confirmed', 'redrawn'].map((value) => ({ value, label: say(`draw.zones.${value}`) }))} />
      <${TextField} name="zone-by" label=${say('draw.zones.by')} hint=${say('draw.zones.by.hint')} value=${draft.zone_by} onChange=${set('zone_by')} />
      <${TextField} name="zone-standard" label=${say('draw.zones.standard')} value=${draft.zone_standard} onChange=${set('zone_standard')} />
      <${Choice} name="zone-basis" label=${say('draw.zones.basis')} value=${draft.zone_basis} onChange=${set('zone_basis')} options=${['ASD', 'strength', ''].map((value) => ({ value, label: say(`draw.zones.basis.${value || 'untold'}`) }))} />
      ${['confirmed', 'redrawn'].includes(draft.zone_state) && !draft.zone_by.trim() && html`<p class="problem" role="alert"><strong>▲ ${say('draw.zones.by.missing')}</strong></p>`}
    <//>
    <${Faults} layout=${layout} unit=${draft.unit} onSelect=${null} />
    <a class="press main" href=${path('job', job, 'draw', rest[0])} data-name="drawn"><span class="label">${say('draw.back')}</span></a>
  <//>`
}
