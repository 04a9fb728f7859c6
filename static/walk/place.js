// A place to look at: area, panel, distance from the panel's low end, zone. Or why it was not reached.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { enter } from '../frame/enter.js'
import { useDraft } from '../frame/draft.js'
import { drawn, quantity } from '../frame/amount.js'
import { uuid7 } from '../entry/uuid7.js'
import { Screen } from '../frame/screen.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { MainAction } from '../frame/main_action.js'
import { Plan } from '../roof/plan.js'
import { rounded } from '../roof/pick.js'
import { legHidden } from '../roof/placed.js'
import { sorted } from '../roof/order.js'
import { zoneName } from '../roof/names.js'
import { placeKey, useZoneHere } from './zone_here.js'

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props */
export function Place({ job, record, definitions, person, rest }) {
  const [walkId, areaId, panel, at] = rest
  const walk = record.walks[walkId]
  const key = `place/${walkId}`
  const given = areaId ? { area: areaId, panel: panel ?? null, at: at ?? null, zone: onlyZone(record.areas[areaId]) } : {}
  const [draft, change] = useDraft(person.id, rest.length > 1 ? `${key}/${rest.slice(1).join('/')}` : key,
    { id: uuid7(), area: walk.areas[0], panel: null, at: null, zone: onlyZone(record.areas[walk.areas[0]]), ...given })
  useZoneHere({ record, area: draft && record.areas[draft.area], draft, change })
  if (!draft) return null
  const area = record.areas[draft.area]
  const unit = area.outline.unit
  const hidden = legHidden(record.coverage?.[draft.area], Number(draft.panel ?? 0))
  const ready = draft.panel !== null && draft.at !== null && draft.zone
  const enterAs = (/** @type {string} */ reached) => async () => {
    await enter({ job, kind: 'station', subject: draft.id, draft: rest.length > 1 ? `${key}/${rest.slice(1).join('/')}` : key, body: {
      walk: walkId, area: draft.area, panel: Math.round(Number(draft.panel)), from_low_end: quantity(draft.at, unit), zone: draft.zone, chosen: 'hand', reached } })
    if (reached === 'yes') go('job', job, 'station', draft.id)
    else go('job', job, 'walk', walkId)
  }
  const picked = (/** @type {number} */ n, /** @type {number} */ far) => change({ panel: String(n), at: rounded(far, unit) })
  return html`<${Screen} title=${say('place')} over=${area.name} back=${path('job', job, 'walk', walkId)} backTo=${say('walk')} wide>
    ${walk.areas.length > 1 && html`<${Choice} name="area" label=${say('walk.areas.one')} value=${draft.area}
      onChange=${(/** @type {string} */ one) => change({ area: one, panel: null, at: null, zone: onlyZone(record.areas[one]) })}
      options=${sorted(record.areas, 'name').filter((one) => walk.areas.includes(one.id)).map((one) => ({ value: one.id, label: one.name }))} />`}
    <p class="big">${say('place.tap')}</p>
    <${Plan} ...${{ record, definitions, area }} only=${walkId} tallest=${420} panel=${draft.panel === null ? null : Number(draft.panel)}
      at=${draft.at === null ? null : drawn(quantity(draft.at, unit), unit)} onPick=${picked} />
    <${Stepper} name="panel" label=${say('place.panel.number')} value=${draft.panel} steps=${[1, 10]} low=${1} high=${area.panel_count ?? 999} onChange=${(/** @type {string} */ value) => change({ panel: String(Math.round(Number(value))) })} onWrong=${() => change({ panel: null })} />
    <${Stepper} name="at" label=${say('place.distance')} value=${draft.at} unit=${unit} steps=${unit === 'm' ? [0.1, 1] : [0.5, 5]} low=${0} high=${Number(area.panel_length?.value ?? 1000)} onChange=${(/** @type {string} */ value) => change({ at: value })} onWrong=${() => change({ at: null })} />
    <${Choice} name="zone" label=${say('place.zone')} hint=${draft.zone_told === placeKey(draft) && draft.zone_at !== placeKey(draft) ? say('plan.zone.from_map') : ''} value=${draft.zone}
      onChange=${(/** @type {string} */ zone) => change({ zone, zone_at: placeKey(draft) })}
      options=${(area.zones ?? []).map((/** @type {string} */ zone) => ({ value: zone, label: zoneName(zone) }))} />
    ${hidden && html`<p class="problem" role="status" data-name="next-set"><strong>▲ ${say('place.next_set', { n: Number(draft.panel) + 1 })}</strong> ${say('place.next_set.way_out')}</p>`}
    <${MainAction} name="look" label=${say('place.look')} run=${enterAs('yes')} disabled=${!ready} under=${ready ? '' : say('place.still')} />
    <${MainAction} plain name="unsafe" label=${say('place.unsafe')} under=${say('place.unsafe.under')} run=${enterAs('unsafe')} disabled=${!ready} />
    <${MainAction} plain name="covered" label=${say('place.covered')} run=${enterAs('covered')} disabled=${!ready} />
  <//>`
}

/** The zone where there is only one to choose. @param {any} area */
function onlyZone(area) {
  return area?.zones?.length === 1 ? area.zones[0] : ''
}
