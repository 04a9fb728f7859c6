// The fit check of one area, before work: a ledger of pairs, the worst first, computed anew at every change.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { clock } from '../frame/age.js'
import { useDraft } from '../frame/draft.js'
import { MainAction } from '../frame/main_action.js'
import { NotYet } from '../frame/opening.js'
import { Problem } from '../frame/problem.js'
import { usePeople } from '../frame/people.js'
import { signer } from '../frame/signer.js'
import { Part, Screen } from '../frame/screen.js'
import { TextField } from '../frame/text_field.js'
import { today } from '../frame/today.js'
import { build } from '../server/build.js'
import { grouped, useLines } from './lines.js'
import { Line } from './line.js'
import { mayRecord, recordFit } from './record.js'
import { Row } from './row.js'
import { Ribs } from './ribs.js'
import { Since } from './since.js'

/** @param {{job: string, record: any, person: any, rest: string[]}} props */
export function Fit({ job, record, person, rest }) {
  const area = record.areas[rest[0]]
  const people = usePeople(job)
  const key = `fit/${area.id}`
  const [draft, change] = useDraft(person.id, key, { found: {}, note: '' })
  const [day] = useState(() => today())
  const [rulebook, setRulebook] = useState('')
  useEffect(() => { build().then(setRulebook) }, [])
  const { lines, fault, settled } = useLines({ record, area, found: draft?.found ?? null, day })
  if (!draft || !(lines || fault)) return null
  const put = (/** @type {any} */ found) => change({ found })
  if (rest[1]) {
    const answer = lines?.find((one) => one.line === rest[1])
    return answer ? html`<${Line} ...${{ job, record, area, answer, found: draft.found, change: put }} />` : html`<${NotYet} job=${job} />`
  }
  const before = record.fits[area.id]
  const keep = async () => {
    await recordFit({ job, record, area, person, day, found: draft.found, note: draft.note, lines: lines ?? [], rulebook, draft: key })
    go('job', job, 'area', area.id)
  }
  const again = before && Object.keys(draft.found).length === 0
  return html`<${Screen} title=${say('fit')} over=${area.name} back=${path('job', job, 'area', area.id)} backTo=${area.name} wide>
    <p class="big">${say('fit.what', { assembly: record.assemblies[area.assembly]?.name ?? '—', day })}</p>
    <p class="small">${say('not_the_engineer')}</p>
    ${lines && html`<${Ribs} lines=${lines} />`}
    ${before && html`<${Since} ...${{ record, area, day }} />`}
    ${again && html`<button type="button" class="press" data-name="fit-again" onClick=${() => put(before.found)}>${say('fit.again', { at: clock(before.at), name: signer(people, before) })}</button>`}
    <${Problem} fault=${fault} />
    ${grouped(lines ?? []).map(([verdict, some]) => html`<${Part} key=${verdict} name=${say('fit.group', { result: say(`result.${verdict}`), n: some.length })}>
      <ul class="rows beside">${some.map((answer) => html`<${Row} key=${answer.line} ...${{ job, area, answer }} />`)}</ul>
    <//>`)}
    ${lines && mayRecord(person) && html`
      <${TextField} name="fit-note" lines=${2} label=${say('item.note')} value=${draft.note} onChange=${(/** @type {string} */ note) => change({ note })} />
      <${MainAction} name="record-fit" label=${say('fit.record')} under=${say('fit.record.under', { name: person.name })} run=${keep} disabled=${!rulebook || !settled} />`}
  <//>`
}
