// What was approved: the tested assembly as the job's office entered it, zones first because they are asked for most.

import { html } from '../frame/view.js'
import { known, say } from '../words/say.js'
import { path } from '../frame/route.js'
import { shown } from '../frame/amount.js'
import { Part, Screen } from '../frame/screen.js'
import { Facts } from '../frame/facts.js'
import { zoneName } from './names.js'

const MADE_OF = ['panel', 'seam', 'seam_height', 'coverage', 'metal', 'gauge', 'coating', 'deck', 'underlayment']
const HELD_BY = ['attachment', 'slot_length', 'slot_pitch', 'clip', 'clip_travel_outward', 'clip_travel_inward', 'fastener',
  'fastener_diameter', 'fastener_head_diameter', 'fastener_length', 'fasteners_per_clip']
const BOUNDS = ['minimum_slope', 'longest_run', 'expansion', 'expansion_source']

/** @param {{job: string, record: any, rest: string[]}} props */
export function Approved({ job, record, rest }) {
  const assembly = record.assemblies[rest[0]]
  const rows = (/** @type {string[]} */ names) => names.map((name) => [say(`assembly.${name}`), text(assembly, name)])
  return html`<${Screen} title=${assembly.name} over=${say('job.approved')} back=${path('job', job)} backTo=${record.job.name} wide>
    <p class="figure-line">${assembly.approval.reference}</p>
    <p class="big">${say('approved.until', assembly.approval)}</p>
    <${Part} name=${say('approved.zones')}>
      <div class="zones">${(assembly.zones ?? []).map((/** @type {any} */ zone) => html`<div key=${zone.name} class="zone">
        <span>${zoneName(zone.name)}</span><strong class="number">${shown(zone.spacing)}</strong>
        <span>${say('approved.spacing')}${zone.pressure ? ` · ${shown(zone.pressure)}` : ''}</span></div>`)}</div>
    <//>
    <${Part} name=${say('approved.held_by')}><${Facts} rows=${rows(HELD_BY)} /><//>
    <${Part} name=${say('approved.made_of')}><${Facts} rows=${rows(MADE_OF)} /><//>
    <${Part} name=${say('approved.bounds')}><${Facts} rows=${rows(BOUNDS)} /><//>
    <p class="small">${say('not_the_engineer')}</p>
  <//>`
}

/** @param {any} assembly @param {string} name */
function text(assembly, name) {
  const value = assembly[name]
  if (value === undefined || value === null) return ''
  if (name === 'gauge') return `${value} (${assembly.gauge_system})`
  if (typeof value === 'object') return shown(value)
  return known(`${name}.${value}`) ? say(`${name}.${value}`) : String(value)
}
