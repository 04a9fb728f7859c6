// A slope: the phone laid on it, turned end for end to find its own error; or typed from another instrument.

import { html, useEffect, useRef, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { WANTED, asReadings, askew, notTurned, wayOf } from './lying.js'
import { feel, mayFeel } from './orientation.js'
import { stepsOf } from './unit_for.js'

const UNITS = ['/12', 'deg', '%']
const HIGH = /** @type {Record<string, number>} */ ({ '/12': 48, deg: 89, '%': 400 })
const SETTLES = 1000 // ms for the hand to leave the phone
const APART = 40 // ms between two readings

/** @param {{item: any, record: any, value: any, onChange: (reading: any) => any}} props */
export function Inclinometer({ item, record, value, onChange }) {
  const [way, setWay] = useState(value?.value ? 'typed' : 'phone')
  const choose = (/** @type {string} */ one) => { if (one !== way) { setWay(one); onChange(null) } }
  return html`<${Choice} name="slope-way" label=${say('slope.way')} value=${way} onChange=${choose}
      options=${['phone', 'typed'].map((one) => ({ value: one, label: say(`slope.way.${one}`) }))} />
    ${way === 'phone' ? html`<${Phone} ...${{ value, onChange, type: () => choose('typed') }} />` : html`<${Typed} ...${{ item, record, value, onChange }} />`}`
}

/** @param {{item: any, record: any, value: any, onChange: (reading: any) => any}} props */
function Typed({ item, record, value, onChange }) {
  const [unit, setUnit] = useState(value?.value?.unit ?? '/12')
  const turn = (/** @type {string} */ one) => { setUnit(one); onChange(null) } // the same digits are another slope in another unit
  return html`<${Choice} name="slope-unit" label=${say('slope.unit')} value=${unit} onChange=${turn} options=${UNITS.map((one) => ({ value: one, label: say(`slope.unit.${one}`) }))} />
    <${Stepper} key=${unit} name="reading" label=${say('area.slope')} value=${value?.value?.value ?? null} unit=${unit === '/12' ? say('area.slope.unit') : unit === 'deg' ? '°' : unit}
      steps=${unit === '%' ? [1, 5] : stepsOf(item.unit?.[record.job.units] === unit ? item : {}, record, unit)} low=${0} high=${HIGH[unit]}
      onChange=${(/** @type {string} */ text) => onChange({ value: { value: text, unit } })} onWrong=${() => onChange(null)} />`
}

/** @param {{value: any, onChange: (reading: any) => any, type: () => any}} props */
function Phone({ value, onChange, type }) {
  const [state, setState] = useState('')
  const [along, setAlong] = useState(/** @type {number[]} */ ([]))
  const [across, setAcross] = useState(0)
  const stop = useRef(() => {})
  const first = useRef(1) // which end of the phone was up the slope
  useEffect(() => () => stop.current(), [])
  const run = async (/** @type {boolean} */ turned) => {
    stop.current()
    setAlong([])
    setState('asking')
    if (!(await mayFeel())) return setState('refused')
    setState('still')
    const from = Date.now() + SETTLES
    const read = /** @type {number[]} */ ([])
    let next = from
    stop.current = feel((lies) => {
      const now = Date.now()
      if (now < next) return
      next = now + APART
      read.push(lies.along)
      setAcross(lies.across)
      setAlong([...read])
      if (read.length >= WANTED) finish(read, turned)
    }, () => { stop.current(); setState('silent') })
  }
  const finish = (/** @type {number[]} */ read, /** @type {boolean} */ turned) => {
    stop.current()
    if (!turned) {
      first.current = wayOf(read)
      onChange({ readings: asReadings(read, first.current) })
      return setState('')
    }
    if (notTurned(read, first.current)) return setState('not_turned')
    onChange({ ...value, reversed: asReadings(read, -first.current) })
    setState('')
  }
  const busy = state === 'still' || state === 'asking'
  const done = Boolean(value?.readings)
  return html`<p class="hint">${say('slope.how')}</p>
    ${busy && html`<p class="figure-line" role="status" data-name="slope-progress">${along.length ? say('slope.progress', { n: along.length, of: WANTED }) : say('slope.hands_off')}</p>
      ${along.length > 0 && html`<p class="big">${say('slope.between', { low: Math.min(...along.map(Math.abs)).toFixed(1), high: Math.max(...along.map(Math.abs)).toFixed(1) })}</p>`}`}
    ${along.length > 0 && askew(across) && html`<p class="problem" role="alert" data-name="slope-askew"><strong>▲ ${say('slope.askew')}</strong></p>`}
    ${(state === 'silent' || state === 'refused') && html`<div class="problem" role="alert" data-name="slope-silent"><strong>▲ ${say(state === 'silent' ? 'slope.silent' : 'slope.refused')}</strong></div>
      <button type="button" class="press tall" data-name="slope-type" onClick=${type}><span class="label">${say('slope.way.typed')}</span></button>`}
    ${state === 'not_turned' && html`<p class="problem" role="alert" data-name="slope-not-turned"><strong>▲ ${say('slope.not_turned')}</strong></p>`}
    ${done && !busy && html`<p class="done-bar" data-name="slope-done">✓ ${say(value.reversed ? 'slope.both' : 'slope.one')}</p>
      ${!value.reversed && html`<button type="button" class="press main plain" data-name="slope-turn" onClick=${() => run(true)}><span class="label">${say('slope.turn')}</span><span class="under">${say('slope.turn.under')}</span></button>`}`}
    ${!busy && html`<button type="button" class=${done ? 'press' : 'press main plain'} data-name="slope-start" onClick=${() => run(false)}><span class="label">${say(done ? 'slope.again' : 'slope.start')}</span></button>`}`
}
