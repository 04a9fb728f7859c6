// One item: what is asked and why, how to look, and the answer: a word, a number, or a reading the rulebook judges.

import { html, useEffect, useState } from '../frame/view.js'
import { pick, say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { Part, Screen } from '../frame/screen.js'
import { MainAction } from '../frame/main_action.js'
import { TextField } from '../frame/text_field.js'
import { Lost } from '../frame/opening.js'
import { useDraft } from '../frame/draft.js'
import { build } from '../server/build.js'
import { needsArea } from '../checklist/items.js'
import { Instrument } from '../instruments/instrument.js'
import { MetalNow } from '../instruments/metal_now.js'
import { enterAnswer } from './answer.js'
import { picturesOf } from './pictures.js'
import { resultWords } from './item_row.js'
import { answerId } from './sort_items.js'
import { AreaPick, areaOf } from './area_pick.js'
import { computed, judged, noted, recorded } from './verdict.js'
import { useReading } from './use_reading.js'
import { Again } from './again.js'
import { Pair } from './pair.js'
import { Working } from './working.js'

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props */
export function Item({ job, record, definitions, person, rest }) {
  const [per, place, id, name, ...then] = rest
  const station = per === 'station' ? record.stations[place] : null
  const walk = record.walks[station ? station.walk : place]
  const definition = definitions.find((one) => one.id === id)
  const item = definition?.items.find((/** @type {any} */ one) => one.id === name)
  const back = station ? ['station', place, ...then] : then.length ? then : ['walk', place]
  const key = `item/${place}/${id}/${name}`
  const [draft, change, drop] = useDraft(person.id, key, { note: '', reading: null, read: 0, of: '', area: '' })
  const area = draft && walk ? areaOf(record, walk, station, draft.area) : null
  const subject = item ? answerId(place, definition, item) : ''
  const { close, metal, own, whole, verdict, bare, beforehand } = useReading({ record, person, walk, station, area, item, subject, draft })
  const [digest, setDigest] = useState('')
  useEffect(() => { build().then(setDigest) }, [])
  if (!walk || !item) return html`<${Lost} />`
  if (!draft) return null
  const answer = record.answers[subject]
  const locked = Boolean(walk.signoff) || walk.by !== person.id
  const pictures = picturesOf(record, walk, station, subject)
  const keep = async (/** @type {string | null} */ choice, /** @type {any} */ result) => {
    await enterAnswer({ job, record, walk, station, area: aboutArea ? area?.id : undefined, definition, item, choice, reading: item.kind === 'compute' && !metal ? null : choice === null ? whole : own, note: draft.note, photos: pictures, verdict: result, draft: key })
    await drop()
    go('job', job, ...back)
  }
  const put = (/** @type {any} */ reading) => change({ reading, read: Date.now(), of: close?.sha256 ?? '' })
  // Of several areas only what a rule reads is about one of them; what was read on another is none of this one's.
  const aboutArea = !station && (walk.areas.length === 1 || needsArea(item))
  const byRule = item.rule && (item.instrument || item.kind === 'compute')
  // Before the reading where it is made on the picture or always asked for; else after it, where it may be needed.
  const pair = html`<${Pair} ...${{ job, record, walk, station, person, locked, subject }} />`
  return html`<${Screen} title=${pick(item.question)} over=${pick(definition.title)} back=${path('job', job, ...back)} backTo=${say('back')}>
    ${answer && html`<p class="done-bar">${say('item.so_far')} ${resultWords(answer)}${answer.note ? ` · “${answer.note}”` : ''}</p>
      ${answer.verdict?.rule && html`<details><summary class="press" data-name="so-far">${say('item.working')}</summary><${Working} then answer=${recorded(answer.verdict)} /></details>`}`}
    ${record.findings[subject] && html`<a class="press" href=${path('job', job, 'finding', subject)} data-name="to-finding"><span class="label">${say('finding.of_answer')}</span><span class="go" aria-hidden="true">→</span></a>`}
    <p class="big">${pick(item.how)}</p>
    <details><summary class="press">${say('item.why')}</summary><p>${pick(item.why)}</p><p class="hint">${say(`severity.${item.severity}`)} · ${pick(item.basis)}</p></details>
    ${!locked && html`
      ${byRule && !station && needsArea(item) && html`<${AreaPick} ...${{ record, walk, value: area?.id, onChange: (/** @type {string} */ one) => { if (one !== area?.id) change({ area: one, reading: null }) } }} />`}
      ${item.photo === 'required' && !(item.instrument === 'slot_taps' && pictures.length > 1) && pair}
      ${byRule && html`<${MetalNow} ...${{ record, metal, forget: () => put(null) }} />`}
      ${item.instrument && html`<${Part} name=${say('item.reading')}>
        <${Instrument} key=${aboutArea && area?.id} ...${{ item, record, area, picture: close?.sha256 ?? '', job, value: own, verdict, bare, beforehand, onChange: put,
          retake: close && html`<${Again} ...${{ job, record, walk, station, person, subject }} />` }} />
      <//>`}
      <${TextField} name="note" lines=${2} label=${say('item.note')} value=${draft.note} onChange=${(/** @type {string} */ note) => change({ note })} />
      ${byRule && verdict && html`<${Working} answer=${verdict} />`}
      ${item.photo === 'on_fail' && pair}
      ${item.photo === 'required' && pictures.length === 0 && html`<p class="problem">▲ ${say('item.photo_missing')}</p>`}
      ${byRule && html`<${MainAction} name="record" label=${say('item.record')} disabled=${!verdict} run=${() => keep(null, computed(verdict, digest))} />`}
      ${!byRule && item.kind === 'judge' && html`
        <${MainAction} name="pass" label=${say('item.pass')} run=${() => keep('pass', judged('pass'))} />
        <${MainAction} name="fail" plain label=${say('item.fail')} under=${say('item.fail.under')} run=${() => keep('fail', judged('fail'))} />`}
      ${!byRule && item.kind !== 'judge' && html`<${MainAction} name="record" label=${say('item.record')} run=${() => keep(null, noted())} />`}
      <${MainAction} name="cannot-tell" quiet label=${say('item.cannot_tell')} run=${() => keep('not_determinable', judged('not_determinable'))} />
      <${MainAction} name="not-here" quiet label=${say('item.not_here')} run=${() => keep('not_applicable', judged('not_applicable'))} />`}
  <//>`
}
