// Where the area lies on the roof: an edge tapped against another area's edge, or said as a bearing and two distances.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { number } from '../words/number.js'
import { path } from '../frame/route.js'
import { METRES } from '../frame/amount.js'
import { Part, Screen } from '../frame/screen.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { sorted } from '../roof/order.js'
import { cosine, laidOut, placeOf } from '../roof/placing.js'
import { against } from './against.js'
import { Beside } from './beside.js'
import { Steps } from './steps_bar.js'
import { long, numbers, text } from './outline.js'
import { useDrawing } from './use_drawing.js'

const COMPASS = ['0', '45', '90', '135', '180', '225', '270', '315']

/** @param {{job: string, record: any, person: any, rest: string[]}} props */
export function Placing({ job, record, person, rest }) {
  const drawing = useDrawing({ job, record, person, rest })
  const { draft, make } = drawing
  const [own, setOwn] = useState(/** @type {number | null} */ (null))
  const [other, setOther] = useState('')
  const [flush, setFlush] = useState(/** @type {'from' | 'middle' | 'to'} */ ('middle'))
  const [differ, setDiffer] = useState(0)
  if (!draft) return null
  const metre = METRES[draft.unit] ?? 1
  const slope = { value: draft.slope, unit: draft.slope_unit }
  const here = { id: draft.id, name: draft.name || say('draw.this'), slope, outline: { unit: draft.unit, points: draft.points }, edges: draft.edges, place: draft.place && !Object.values(draft.place).includes(null) ? { unit: draft.unit, ...draft.place } : null }
  const others = sorted(record.areas, 'name').filter((one) => one.id !== draft.id && placeOf(one))
  const shown = laidOut([...others, here])
  const set = (/** @type {string} */ name) => (/** @type {string | null} */ value) => make((/** @type {any} */ old) => ({ place: { east: '0', north: '0', up: '0', ...old.place, [name]: value } }), `place/${name}`)
  const lay = (/** @type {number} */ i, /** @type {string} */ area, /** @type {number} */ j, /** @type {any} */ how) => {
    const found = /** @type {any} */ (shown.find((one) => one.area.id === area))
    const put = against({ points: numbers(draft.points), cos: cosine(slope), metre }, i, { place: found.place, points: found.rings[0] }, j, how)
    setDiffer(put.differ / metre)
    make({ place: { east: text(put.east / metre), north: text(put.north / metre), up: text(put.up) } })
  }
  const pick = (/** @type {string} */ area, /** @type {number} */ at) => {
    if (area === draft.id) setOwn(at)
    else setOther(`${area}/${at}`)
    const [i, to] = area === draft.id ? [at, other] : [own, `${area}/${at}`]
    if (i !== null && to) lay(i, to.split('/')[0], Number(to.split('/')[1]), flush)
  }
  const [otherArea, otherEdge] = other.split('/')
  const beside = others.find((one) => one.id === otherArea)
  const value = (/** @type {string} */ name) => (draft.place ? draft.place[name] : '0')
  return html`<${Screen} title=${say('draw.place')} over=${draft.name} back=${path('job', job, 'draw', rest[0])} backTo=${say('draw.back')} wide>
    <p class="big">${others.length ? say('draw.place.tap') : say('draw.place.first')}</p>
    <${Beside} ...${{ shown, mine: draft.id, own, other, pick }} />
    <${Steps} ...${{ drawing }} />
    ${others.length > 0 && html`
      <${Choice} name="own-edge" label=${say('draw.place.own')} value=${own === null ? null : String(own)} onChange=${(/** @type {string} */ one) => pick(draft.id, Number(one))} options=${edgeOptions(here)} />
      <${Choice} name="beside" label=${say('draw.place.beside')} value=${otherArea} onChange=${(/** @type {string} */ one) => setOther(`${one}/`)} options=${others.map((one) => ({ value: one.id, label: one.name }))} />
      ${beside && html`<${Choice} name="beside-edge" label=${say('draw.place.its_edge', { area: beside.name })} value=${otherEdge} onChange=${(/** @type {string} */ one) => pick(otherArea, Number(one))} options=${edgeOptions(beside)} />`}
      ${own !== null && otherEdge && html`<${Choice} name="flush" label=${say('draw.place.flush')} value=${flush} onChange=${(/** @type {any} */ how) => { setFlush(how); lay(own, otherArea, Number(otherEdge), how) }}
        options=${['from', 'middle', 'to'].map((how) => ({ value: how, label: say(`draw.place.flush.${how}`) }))} />
        ${Math.abs(differ) > 0.02 / metre && html`<p class="hint" data-name="differ">${say(differ > 0 ? 'draw.place.longer' : 'draw.place.shorter', { by: number(Math.abs(differ).toFixed(3), draft.unit) })}</p>`}`}`}
    <${Part} name=${say('draw.place.typed')}>
      <div class="forms"><${Choice} name="up" label=${say('draw.place.up')} value=${COMPASS.find((one) => one === value('up')) ?? ''} onChange=${set('up')} options=${COMPASS.map((one) => ({ value: one, label: say(`compass.${one}`) }))} /></div>
      <${Stepper} name="bearing" label=${say('draw.place.bearing')} unit="°" steps=${[1, 15]} low=${0} high=${360} value=${value('up')} onChange=${set('up')} onWrong=${() => set('up')(null)} />
      ${['east', 'north'].map((name) => html`<${Stepper} key=${name} name=${name} label=${say(`draw.place.${name}`)} unit=${draft.unit} steps=${[1, 10]} low=${-10000} high=${10000} value=${value(name)} onChange=${set(name)} onWrong=${() => set(name)(null)} />`)}
    <//>
    <a class="press main" href=${path('job', job, 'draw', rest[0])} data-name="drawn"><span class="label">${say('draw.back')}</span></a>
  <//>`
}

/** @param {any} area */
function edgeOptions(area) {
  return area.outline.points.map((/** @type {any} */ _, /** @type {number} */ i) => ({
    value: String(i), label: `${i + 1}: ${area.edges[i] ? say(`edge.${area.edges[i]}`) : say('draw.edge.unnamed')}`, under: number(long(area.outline.points, i).toFixed(3), area.outline.unit) }))
}
