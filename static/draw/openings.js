// Openings in the area: curbs, skylights, whatever the panels must go round.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Screen } from '../frame/screen.js'
import { TextField } from '../frame/text_field.js'
import { areaBody, whole } from './body.js'
import { Faults, Figures, useLayout } from './checks.js'
import { Inner } from './inner.js'
import { box, numbers, text } from './outline.js'
import { rectangle } from './rectangle.js'
import { Which } from './which.js'
import { useDrawing } from './use_drawing.js'

/** @param {{job: string, record: any, person: any, rest: string[]}} props */
export function Openings({ job, record, person, rest }) {
  const drawing = useDrawing({ job, record, person, rest })
  const { draft, make } = drawing
  const [at, setAt] = useState(0)
  const assembly = draft && record.assemblies[draft.assembly]
  const layout = useLayout(draft && whole(draft) && !draft.laying ? areaBody(draft, record) : null, assembly)
  if (!draft) return null
  const here = draft.openings[at] ? at : draft.openings.length - 1
  const add = () => {
    const { left, low, width, height } = box(numbers(draft.points))
    const size = draft.unit === 'm' ? 1 : 3
    const points = rectangle(text(Math.round(left + width / 2 - size / 2)), text(Math.round(low + height / 2 - size / 2)), String(size), String(size))
    make((/** @type {any} */ old) => ({ openings: [...old.openings, { name: say('draw.opening', { n: old.openings.length + 1 }), points }] }))
    setAt(draft.openings.length)
  }
  const name = (/** @type {string} */ value) => make((/** @type {any} */ old) => ({ openings: old.openings.map((/** @type {any} */ one, /** @type {number} */ i) => (i === here ? { ...one, name: value } : one)) }), `opening/${here}`)
  return html`<${Screen} title=${say('draw.openings')} over=${draft.name} back=${path('job', job, 'draw', rest[0])} backTo=${say('draw.back')} wide>
    <p>${say('draw.openings.what')}</p>
    <${Which} names=${draft.openings.map((/** @type {any} */ one) => one.name)} at=${here} onPick=${setAt} onAdd=${draft.points.length > 2 && !draft.laying ? add : null} label=${say('draw.openings')} addLabel=${say('draw.openings.add')} />
    ${here >= 0 && html`<${TextField} name="opening-name" label=${say('draw.opening.name')} hint=${say('draw.opening.name.hint')} value=${draft.openings[here].name} onChange=${name} />
      <${Inner} key=${here} ...${{ drawing }} list="openings" at=${here} />
      <button type="button" class="press" data-name="remove-opening" onClick=${() => make((/** @type {any} */ old) => ({ openings: old.openings.filter((/** @type {any} */ _, /** @type {number} */ i) => i !== here) }))}>${say('draw.opening.remove')}</button>`}
    <${Faults} layout=${layout} unit=${draft.unit} onSelect=${null} /><${Figures} layout=${layout} assembly=${assembly} />
    <a class="press main" href=${path('job', job, 'draw', rest[0])} data-name="drawn"><span class="label">${say('draw.back')}</span></a>
  <//>`
}
