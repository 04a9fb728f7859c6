// Close a walk: what was looked at and what was not, the statement, a signature by finger.

import { html, useEffect, useRef, useState } from '../frame/view.js'
import { pick, say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { Part, Screen } from '../frame/screen.js'
import { Lost } from '../frame/opening.js'
import { MainAction } from '../frame/main_action.js'
import { Facts } from '../frame/facts.js'
import { enter } from '../frame/enter.js'
import SignaturePad from '../vendor/signature_pad.js'
import { covered, tally } from './covered.js'
import { leftOpen } from './left_open.js'
import { TapsToMake } from './taps_to_make.js'
import { metalKey } from '../instruments/use_metal.js'

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props */
export function SignOff({ job, record, definitions, person, rest }) {
  const walk = record.walks[rest[0]]
  const canvas = useRef(/** @type {any} */ (null))
  const pad = useRef(/** @type {any} */ (null))
  const [signed, setSigned] = useState(false)
  useEffect(() => {
    if (!canvas.current) return
    const box = canvas.current.getBoundingClientRect()
    canvas.current.width = Math.round(box.width)
    canvas.current.height = Math.round(box.height)
    pad.current = new SignaturePad(canvas.current, { penColor: '#17232b', minWidth: 1.5, maxWidth: 4 })
    pad.current.addEventListener('endStroke', () => setSigned(true))
    return () => pad.current.off()
  }, [])
  if (!walk) return html`<${Lost} />`
  // Of one area papers, boxes and the deck were looked at, and no places.
  const own = definitions.find((one) => one.digest === walk.definition)
  const statement = say(own?.per === 'area' ? 'sign.statement.area' : 'sign.statement')
  const { places, notReached, failed, unanswered } = tally(record, walk)
  const sign = async () => {
    const strokes = pad.current.toData().map((/** @type {any} */ one) => one.points.flatMap((/** @type {any} */ point) => [Math.round(point.x), Math.round(point.y)]))
    await enter({ job, kind: 'signoff', subject: walk.id, replaces: walk.signoff?.heads ?? [], draft: metalKey(walk.id),
      body: { walk: walk.id, statement, name: person.name, role: person.role, strokes,
        canvas: { width: canvas.current.width, height: canvas.current.height }, covers: covered(record, walk) } })
    go('job', job, 'walk', walk.id)
  }
  const open = leftOpen(record, definitions, walk)
  const again = () => { pad.current.clear(); setSigned(false) }
  return html`<${Screen} title=${say('sign.title')} over=${record.job.name} back=${path('job', job, 'walk', walk.id)} backTo=${say('walk')}>
    <${Facts} rows=${[[say('sign.places'), places], [say('sign.not_reached'), notReached], [say('sign.failed'), failed], [say('sign.unanswered'), unanswered]]} />
    ${open.length > 0 && html`<details><summary class="press" data-name="left-open">▲ ${say('sign.open', { n: open.length })}</summary>
      <ul class="rules">${open.map(({ item, station }, n) => html`<li key=${n}>${station ? `${say('place.panel', { panel: station.panel })}: ` : ''}${pick(item.question)}</li>`)}</ul></details>`}
    <${TapsToMake} ...${{ job, record, definitions, walk }} />
    <${Part} name=${say('sign.says')}>
      <p class="big">${statement}</p>
      <p class="hint">${say('sign.limits')}</p>
      <p>${person.name}, ${say(`role.${person.role}`)}</p>
      <canvas class="pad" ref=${canvas} role="img" aria-label=${say('sign.pad')} data-name="pad"></canvas>
      <button type="button" class="press" onClick=${again} data-name="sign-again">${say('sign.again')}</button>
    <//>
    <${MainAction} name="sign" label=${say('sign.close')} under=${say('sign.close.under')} disabled=${!signed} run=${sign} />
  <//>`
}
