// Let a firm take part in the job: its side, and what its people see of the roof.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { useDraft } from '../frame/draft.js'
import { Choice } from '../frame/choice.js'
import { MainAction } from '../frame/main_action.js'
import { Screen } from '../frame/screen.js'
import { TextField } from '../frame/text_field.js'
import { tell, useAsked } from './asked.js'
import { Told } from './told.js'

const SIDES = ['contractor', 'sub', 'supplier', 'owner', 'engineer', 'reviewer']

/** @param {{job: string, record: any, person: any, rest: string[]}} props `rest`: the firm's id, if it takes part already */
export function FirmScreen({ job, record, person, rest }) {
  const [id] = rest
  const back = { back: path('job', job, 'people'), backTo: say('people'), over: record.job.name }
  if (!id) return html`<${Screen} title=${say('people.add_firm')} ...${back}><${Form} ...${{ job, record, person, firm: null }} /><//>`
  return html`<${Known} ...${{ job, record, person, id, back }} />`
}

/** @param {any} props */
function Known({ job, record, person, id, back }) {
  const asked = useAsked(`/api/jobs/${job}/people`)
  const firm = asked.data?.firms.find((/** @type {any} */ one) => one.id === id)
  return html`<${Screen} title=${firm?.name ?? say('firm')} ...${back}>
    <${Told} asked=${asked}>${() => (firm ? html`<${Form} ...${{ job, record, person, firm }} />` : html`<p class="problem">▲ ${say('firm.gone')}</p>`)}<//>
  <//>`
}

/** @param {{job: string, record: any, person: any, firm: any}} props */
function Form({ job, record, person, firm }) {
  const key = `office-firm/${job}/${firm?.id ?? ''}`
  const [draft, change, drop] = useDraft(person.id, key, { name: firm?.name ?? '', side: firm?.side ?? '', sees: firm?.areas ? 'areas' : 'whole', areas: firm?.areas ?? [] })
  if (!draft) return null
  const wants = !draft.name.trim() ? 'firm.wants_name' : !draft.side ? 'firm.wants_side' : draft.sees === 'areas' && !draft.areas.length ? 'firm.wants_areas' : ''
  const turn = (/** @type {string} */ area) => change((/** @type {any} */ old) => ({
    areas: old.areas.includes(area) ? old.areas.filter((/** @type {string} */ one) => one !== area) : [...old.areas, area] }))
  const run = async () => {
    await tell('POST', `/api/jobs/${job}/firms`, { name: draft.name.trim(), side: draft.side, areas: draft.sees === 'areas' ? draft.areas : null })
    await drop()
    go('job', job, 'people')
  }
  return html`
    ${firm ? html`<p class="big">${firm.name}</p>` : html`<${TextField} name="firm-name" label=${say('firm.name')} value=${draft.name} onChange=${(/** @type {string} */ name) => change({ name })} autocomplete="organization" />`}
    <${Choice} name="side" label=${say('firm.side')} value=${draft.side} onChange=${(/** @type {string} */ side) => change({ side })}
      options=${SIDES.map((one) => ({ value: one, label: say(`side.${one}`), under: say(`side.${one}.under`) }))} />
    <${Choice} name="sees" label=${say('firm.sees')} value=${draft.sees} onChange=${(/** @type {string} */ sees) => change({ sees })}
      options=${[{ value: 'whole', label: say('sees.whole') }, { value: 'areas', label: say('firm.sees.areas'), under: say('firm.sees.areas.under') }]} />
    ${draft.sees === 'areas' && html`<${Choice} many name="areas" label=${say('firm.areas')} value=${draft.areas} onChange=${turn}
      options=${Object.values(record.areas).map((/** @type {any} */ one) => ({ value: one.id, label: one.name }))} />`}
    <${MainAction} name="save-firm" label=${firm ? say('firm.save') : say('firm.add')} under=${wants && say(wants)} disabled=${Boolean(wants)} run=${run} />`
}
