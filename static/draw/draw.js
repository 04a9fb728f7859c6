// A roof area drawn by hand: what shape, how long, which edge is what, and how its panels run. Kept at every touch.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { enter } from '../frame/enter.js'
import { Part, Screen } from '../frame/screen.js'
import { Choice } from '../frame/choice.js'
import { TextField } from '../frame/text_field.js'
import { MainAction } from '../frame/main_action.js'
import { sorted } from '../roof/order.js'
import { areaBody, covered, whole } from './body.js'
import { Faults, Figures, faultsOf, useLayout } from './checks.js'
import { Further } from './further.js'
import { Laying } from './laying.js'
import { Outline } from './shape.js'
import { Panels } from './panels.js'
import { begin, FORMS } from './forms.js'
import { useDrawing } from './use_drawing.js'

/** @param {{job: string, record: any, person: any, rest: string[]}} props */
export function Draw({ job, record, person, rest }) {
  const drawing = useDrawing({ job, record, person, rest })
  const { area, draft, make } = drawing
  const [selected, select] = useState(/** @type {any} */ (null))
  const assembly = draft && record.assemblies[draft.assembly]
  const done = draft && whole(draft) && !draft.laying
  const layout = useLayout(done ? areaBody(draft, record) : null, assembly)
  if (!draft) return null
  const metric = record.job.units === 'SI'
  const assemblies = sorted(record.assemblies, 'name')
  const pick = (/** @type {string} */ id) => make({ assembly: id, ...covered(record.assemblies[id], metric) })
  const shape = (/** @type {string} */ form) => { select(null); make({ ...begin(form, metric), openings: [], zone_drawn: [], laying: form === 'free' }) }
  const save = async () => {
    await enter({ job, kind: 'area', subject: draft.id, replaces: draft.heads, body: areaBody(draft, record), draft: drawing.key })
    go('job', job, 'area', draft.id)
  }
  const wrong = faultsOf(layout).length > 0
  return html`<${Screen} title=${area ? say('draw.again') : say('draw')} over=${area?.name} back=${area ? path('job', job, 'area', area.id) : path('job', job)} backTo=${area?.name ?? record.job.name} wide>
    ${area && html`<p>${say('draw.again.what')}</p>`}
    <${TextField} name="area-name" label=${say('area.name')} hint=${say('area.name.hint')} value=${draft.name} onChange=${(/** @type {string} */ name) => make({ name }, 'name')} />
    <${Choice} name="assembly" label=${say('area.assembly')} value=${draft.assembly} onChange=${pick}
      options=${assemblies.map((one) => ({ value: one.id, label: one.name, under: one.approval?.reference }))} />
    <${Part} name=${say('draw.shape')}>
      ${!area && html`<div class="forms"><${Choice} name="form" label=${say('draw.form')} value=${draft.form} onChange=${shape} options=${FORMS.map((form) => ({ value: form, label: say(`draw.form.${form}`) }))} /></div>`}
      ${draft.laying ? html`<${Laying} ...${{ drawing }} />` : html`<${Outline} ...${{ drawing, selected, select, assembly, layout }} />`}
      <${Faults} layout=${layout} unit=${draft.unit} onSelect=${select} />
      <${Figures} layout=${layout} assembly=${assembly} />
    <//>
    <${Panels} ...${{ draft, make, assembly }} />
    <${Further} ...${{ job, draft, name: rest[0] ?? 'new' }} />
    <${MainAction} name="save-area" label=${area ? say('draw.save.again') : say('area.save')} run=${save} under=${wrong ? say('draw.save.faults') : done && draft.name.trim() ? '' : say('draw.save.still')}
      disabled=${!draft.name.trim() || !assembly || !done || wrong} />
  <//>`
}
