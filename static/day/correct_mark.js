// A mark with a wrong number, set right: the same mark said once more. What it said before stays in the record.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { enter } from '../frame/enter.js'
import { Stepper } from '../frame/stepper.js'
import { MainAction } from '../frame/main_action.js'

const SAID = ['lot', 'area', 'change', 'night', 'against', 'metal_temperature', 'metal_temperature_by', 'metal_uncertainty']

/** This person's last mark of a lot, or null. @param {any} record @param {any} person @param {any} lot @returns {any} */
export function lastMark(record, person, lot) {
  const own = Object.values(record.marks ?? {}).filter((/** @type {any} */ mark) => mark.lot === lot.id && mark.by === person.id)
  return own.sort((/** @type {any} */ a, /** @type {any} */ b) => (a.at < b.at ? -1 : 1)).at(-1) ?? null
}

/** @param {{job: string, record: any, person: any, lot: any}} props */
export function CorrectMark({ job, record, person, lot }) {
  const last = lastMark(record, person, lot)
  const [to, setTo] = useState(/** @type {number | null} */ (null))
  if (!last) return null
  const right = to ?? last.to
  const keep = async () => {
    const body = Object.fromEntries(SAID.map((name) => [name, last[name]]))
    await enter({ job, kind: 'mark', subject: last.id, replaces: last.heads, body: { ...body, to: right } })
  }
  return html`<details key=${last.digest}><summary class="press" data-name="mark-wrong">${say('mark.wrong', { to: last.to })}</summary>
    <${Stepper} name="mark-right" label=${say('mark.last')} value=${String(right)} steps=${[1, 5]} low=${lot.population[0].from} high=${record.areas[last.area]?.panel_count ?? 999}
      onChange=${(/** @type {string} */ value) => setTo(Math.round(Number(value)))} onWrong=${() => setTo(last.to)} />
    <p class="hint">${say('mark.wrong.hint')}</p>
    <${MainAction} quiet name="mark-set-right" label=${say('mark.set_right', { to: right })} disabled=${right === last.to} run=${keep} /></details>`
}
