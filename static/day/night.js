// Dusk: the leg left open tonight is held. Four steps in ten minutes, then the word that releases it, or keeps it held.

import { html } from '../frame/view.js'
import { pick, say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { Screen } from '../frame/screen.js'
import { MainAction } from '../frame/main_action.js'
import { END_OF_DAY } from '../checklist/applies.js'
import { DayRecordLine } from '../day_record/line.js'
import { Sheet } from '../walk/sheet.js'
import { Care } from './care.js'
import { DrawnPlaces } from './drawn_places.js'
import { enterRelease, lookedAt, statement } from './enter_release.js'
import { LastPanel } from './last_panel.js'
import { LegPhoto } from './leg_photo.js'
import { doneOf, stepsOf } from './night_steps.js'
import { Step } from './step.js'
import { areaOf } from './standing.js'
import { openToday, walkToday } from './walk_today.js'

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props */
export function Night({ job, record, definitions, person, rest }) {
  const lot = record.lots[rest[0]]
  const area = areaOf(lot)
  const here = ['night', ...rest]
  const night = lot.night
  const frame = { title: say(night ? 'night.panel' : 'night', { panel: night?.panel }), over: `${record.areas[area]?.name} · ${lot.crew}`, back: path('job', job, 'day', lot.id), backTo: say('day') }
  if (!night) return html`<${Screen} ...${frame}><${LastPanel} ...${{ job, record, lot }} /><${Care} /><//>`
  const walk = walkToday(record, definitions, person, END_OF_DAY)
  const own = definitions.find((one) => one.id === END_OF_DAY)
  const hold = lot.holds.find((/** @type {any} */ one) => one.why === 'night' && one.panel === night.panel)
  const released = hold?.state === 'released'
  const seen = lookedAt(record, area, night.panel, walk)
  const steps = stepsOf(own)
  const done = doneOf(record, own, walk, night, steps)
  const first = walk ? done.findIndex((one) => !one) : -1
  const sheet = (/** @type {any[]} */ items) => walk && html`<${Sheet} ...${{ job, record, definition: { ...own, items }, walk, person, station: null, locked: false, then: here }} />`
  const release = async () => {
    await enterRelease({ job, record, person, lot, area, panel: night.panel, why: 'night', seen, walk })
    go('job', job, 'day', lot.id)
  }
  return html`<${Screen} ...${frame}>
    <p class="big">${say('night.ten')}</p>
    ${!walk && !released && html`<a class="press main" href=${path('job', job, 'start', 'then', ...here)} data-name="begin-night"><span class="label">${say('night.begin')}</span><span class="under">${say('hold.begin.under')}</span></a>`}
    <ol class="steps-line">
      <${Step} n=${1} minutes=${say('minutes', { n: 2 })} done=${done[0]} open=${first === 0} name=${say('night.loose')}>${sheet(steps[0])}<//>
      <${Step} n=${2} minutes=${say('minutes', { n: 2 })} done=${done[1]} open=${first === 1} name=${say('night.whole')}>${sheet(steps[1])}
        ${walk && html`<${LegPhoto} ...${{ job, record, person, walk, lot, panel: night.panel }} />`}<//>
      <${Step} n=${3} minutes=${say('minutes.range', { low: 4, high: 5 })} done=${done[2]} open=${first === 2} name=${say('night.places', { n: night.places.length })}>
        <${DrawnPlaces} ...${{ job, record, definitions, walk, lot, area, panel: night.panel, places: night.places, here }} quiet=${!walk} locked=${released} /><//>
      <${Step} n=${4} minutes=${say('minutes.range', { low: 1, high: 2 })} done=${released} open=${first === 3} name=${say('night.sign')}>
        ${walk && html`<${Rest} ...${{ record, own, walk, steps }} /><a class="press" href=${path('job', job, 'walk', walk.id)} data-name="night-walk">${say('night.rest')}</a>`}
        ${openToday(record, person).map((one) => html`<a key=${one.id} class="press tall" href=${path('job', job, 'sign', one.id)} data-name="night-sign"><span class="label">${say('walk.sign')}<span class="under">${pick(definitions.find((all) => all.digest === one.definition)?.title) ?? say('walk')}</span></span></a>`)}
      <//>
    </ol>
    <${DayRecordLine} ...${{ job, record }} day=${lot.day} crew=${lot.crew} />
    ${released ? html`<p class="done-bar" data-name="hold-state" data-state="released">✓ ${say('hold.state.released', { panel: night.panel })}</p>`
      : html`${!seen && html`<p class="problem" data-name="unseen"><strong>▲ ${say('release.nobody_looked')}</strong></p>`}
        <p class="statement">${statement('night', null, seen, night.panel)}</p>
        <p>${person.name}, ${say(`role.${person.role}`)}</p>
        <${MainAction} name="release" plain=${!done.slice(0, 3).every(Boolean)} label=${say('night.release')} under=${say('night.release.under')} run=${release} />
        <p class="hint">${say('night.keep')}</p>`}
    <${Care} />
  <//>`
}

/** How much of the rest has no answer yet. @param {{record: any, own: any, walk: any, steps: any[][]}} props */
function Rest({ record, own, walk, steps }) {
  const open = steps[2].filter((item) => !record.answers[`${walk.id}/${own.id}/${item.id}`]).length
  return open > 0 && html`<p>${say('night.open', { n: open })}</p>`
}
