// One panel of the area looked at: its length, its open leg, the places along it, and those looked at.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { number } from '../words/number.js'
import { go, path } from '../frame/route.js'
import { Stepper } from '../frame/stepper.js'
import { ask } from '../rules/ask.js'
import { FindingsHere } from './findings_here.js'
import { STATES } from './hatches.js'
import { zoneName } from './names.js'
import { PlaceList } from './place_list.js'
import { shownSample } from './sample.js'

/** @param {{job: string, record: any, definitions: any[], person: any, area: any, panel: number | null, legs: any}} props `legs`: the rulebook's places of every panel */
export function PanelCard({ job, record, definitions, person, area, panel, legs }) {
  const [facts, setFacts] = useState(/** @type {any} */ (null))
  useEffect(() => {
    let here = true
    setFacts(null)
    if (panel) ask({ call: 'panel', area, assembly: record.assemblies[area.assembly] ?? null, number: panel }).then((one) => { if (here) setFacts(one) }, () => {})
    return () => { here = false }
  }, [area.digest, panel])
  const pick = (/** @type {string} */ one) => go('job', job, 'plan', area.id, Math.round(Number(one)))
  const walk = /** @type {any} */ (Object.values(record.walks).find((/** @type {any} */ one) => !one.signoff && one.by === person.id && one.areas.includes(area.id)))
  const state = panel && (record.coverage?.[area.id]?.runs ?? []).find((/** @type {any} */ one) => one.from <= panel && panel <= one.to)?.state
  const sample = shownSample(record, area.id).filter((one) => one.panel === panel)
  const own = legs?.find((/** @type {any} */ [n]) => n === panel)?.[1] ?? []
  return html`<${Stepper} name="plan-panel" label=${say('plan.panel')} value=${panel ? String(panel) : null} from="0" steps=${[1, 10]} low=${1} high=${area.panel_count ?? 999} onChange=${pick} />
    ${facts && html`<div class="stack" data-name="panel-facts">
      <p class="big">${say(facts.pieces.length ? 'plan.panel.facts' : 'plan.panel.no_seam', { n: panel, length: number(facts.length, facts.unit), seam: number(facts.seam, facts.unit) })}</p>
      ${state && html`<p data-name="panel-state"><strong>${STATES[state]} ${say(`coverage.${state}`)}</strong></p>`}
      ${sample.map((one) => html`<a key=${one.lot} class="press" href=${path('job', job, 'stop', one.lot, one.panel)} data-name="to-stop"><span class="label">▽ ${say('plan.sample')}</span><span class="go" aria-hidden="true">→</span></a>`)}
      ${own.length > 0 && html`<dl class="facts" data-name="panel-places">${own.map((/** @type {any} */ [y, from, spacing, n, zone]) => html`<div key=${y}><dt>${zone ? zoneName(zone) : say('plan.zone.untold')}</dt>
        <dd>${say('plan.stations.leg', { n, spacing: number(spacing, facts.unit), from: number(from, facts.unit) })}</dd></div>`)}</dl>`}
      <${PlaceList} ...${{ job, record, definitions }} wanted=${(/** @type {any} */ one) => one.area === area.id && one.panel === panel} />
      ${walk && facts.pieces.length > 0 && html`<a class="press" href=${path('job', job, 'place', walk.id, area.id, /** @type {any} */ (panel))} data-name="look-here"><span class="label">${say('plan.look_here')}</span></a>`}
      <${FindingsHere} ...${{ job, record, person, area, panel }} />
    </div>`}`
}
