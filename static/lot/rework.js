// What was put right is looked at anew: a lot of its own over the same panels, with a ticket and a draw of its own.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { MainAction } from '../frame/main_action.js'
import { DECIDED } from './decided.js'
import { drawLot } from './draw_lot.js'
import { lotName } from './name.js'

const MAY = ['foreman', 'inspector']

/** @param {{job: string, record: any, definitions: any[], person: any, lot: any}} props */
export function Rework({ job, record, definitions, person, lot }) {
  const later = Object.values(record.lots).filter((/** @type {any} */ one) => one.reworks === lot.id)
  const run = async () => {
    const { area, from, to } = lot.population[0]
    const made = await drawLot({ job, record, definitions, purpose: 'rework', crew: lot.crew, reworks: lot.id, series: 'work',
      population: [{ area, from, to: lot.placed_to ?? to }] })
    go('job', job, 'audit', made)
  }
  return html`
    ${later.map((/** @type {any} */ one) => html`<a key=${one.id} class=${'press tall ' + one.decision.state} href=${path('job', job, 'lot', one.id)} data-name="rework" data-state=${one.decision.state}>
      <span class=${'mark ' + one.decision.state} aria-hidden="true">${DECIDED[one.decision.state]}</span>
      <span class="label">${say('rework.made', { result: say(`lot.state.${one.decision.state}`) })}<span class="under">${lotName(record, one)} · ${one.day}</span></span><span class="go" aria-hidden="true">→</span></a>`)}
    ${lot.purpose !== 'audit' && later.length === 0 && MAY.includes(person.role) && html`<${MainAction} plain name="draw-rework" label=${say('rework.draw')} under=${say('rework.draw.under')} run=${run} />`}`
}
