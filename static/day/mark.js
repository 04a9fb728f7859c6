// What was set, in one tap: the next panel stands ready. A change of hands or boxes is said with it.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { shown } from '../frame/amount.js'
import { useDraft } from '../frame/draft.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { MainAction } from '../frame/main_action.js'
import { Twice } from '../frame/twice.js'
import { Problem } from '../frame/problem.js'
import { metalKey } from '../instruments/use_metal.js'
import { CorrectMark } from './correct_mark.js'
import { enterMark } from './enter_mark.js'
import { MetalTold } from './metal_told.js'
import { goneOver, nextPanel } from './standing.js'
import { missedStops } from './missed.js'

export const CHANGES = ['driver_hand', 'coil', 'fastener_box', 'clip_type', 'zone_spacing', 'driver_setting', 'long_stop', 'finding']

/** @param {{job: string, record: any, person: any, lot: any, walk: any, plain: boolean}} props `plain`: something else comes first */
export function Mark({ job, record, person, lot, walk, plain }) {
  const key = `mark/${lot.id}`
  const [draft, change, drop] = useDraft(person.id, key, { to: null, change: [], metal: null })
  const [fault, setFault] = useState(/** @type {any} */ (null))
  const [wrong, setWrong] = useState(false)
  const [asked, setAsked] = useState(false)
  if (!draft) return null
  const next = nextPanel(lot)
  const count = record.areas[lot.population[0].area]?.panel_count ?? 999
  const to = Math.min(Math.max(draft.to ?? next, next), Math.max(count, next)) // another phone's mark may have come since
  const metal = draft.metal && Date.now() - draft.metal.at < 600_000 ? draft.metal : null
  const against = goneOver(lot, to)
  const missed = missedStops(record, lot, to)
  const keep = async () => {
    setFault(null)
    await enterMark({ job, lot, to, change: draft.change, against, metal, draft: key })
    await drop()
  }
  const over = () => { keep().catch(setFault) }
  const toggle = (/** @type {string} */ one) => change((/** @type {any} */ now) => ({ change: now.change.includes(one) ? now.change.filter((/** @type {string} */ old) => old !== one) : [...now.change, one] }))
  const under = [metal && say('mark.metal', { metal: shown(metal) }), ...draft.change.map((/** @type {string} */ one) => say(`change.${one}`)),
    missed.length > 0 && '▲ ' + say('mark.missed', { panels: missed.join(', ') })].filter(Boolean).join(' · ')
  return html`<div class="stack mark-set" data-name="mark-set">
    ${against.length ? html`<div class="problem"><strong>▲ ${say('mark.held', { panels: against.join(', ') })}</strong></div>
      <${Twice} name="against" label=${say('mark.against', { to })} ask=${say('mark.against.ask', { panels: against.join(', ') })} run=${over} />
      <${Problem} fault=${fault} />`
      : html`<${MainAction} name="mark" plain=${plain} label=${say('mark.to', { to })} under=${under} run=${keep} disabled=${wrong} />`}
    <${Stepper} name="mark-to" label=${say('mark.last')} value=${String(to)} steps=${[1, 5]} low=${next} high=${count}
      onChange=${(/** @type {string} */ value) => { setWrong(false); change({ to: Math.round(Number(value)) }) }} onWrong=${() => setWrong(true)} />
    <details key=${`changes/${lot.marks.length}`}><summary class="press" data-name="changes">${draft.change.length ? '■ ' + say('mark.changed', { n: draft.change.length }) : say('mark.change')}</summary>
      <${Choice} many name="change" label=${say('mark.what_changed')} hint=${say('mark.change.hint')} value=${draft.change} onChange=${toggle} options=${CHANGES.map((one) => ({ value: one, label: say(`change.${one}`) }))} /></details>
    <details onToggle=${(/** @type {any} */ event) => { if (event.target.open) setAsked(true) }}><summary class="press" data-name="mark-metal">${metal ? say('mark.metal', { metal: shown(metal) }) : say('mark.metal.none')}</summary>
      ${asked && html`<${MetalTold} key=${metalKey(walk?.id ?? lot.id)} ...${{ record, person, lot, walk }} tell=${(/** @type {any} */ found) => { if (found?.at !== draft.metal?.at) change({ metal: found }) }} />`}</details>
    <${CorrectMark} ...${{ job, record, person, lot }} />
  </div>`
}
