// A hold: the first panel, a change, a failed place. Its open leg is looked at, then somebody says that it may be covered.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { clock } from '../frame/age.js'
import { Part, Screen } from '../frame/screen.js'
import { usePeople } from '../frame/people.js'
import { signed } from '../frame/signer.js'
import { MainAction } from '../frame/main_action.js'
import { Twice } from '../frame/twice.js'
import { Sheet } from '../walk/sheet.js'
import { Care } from './care.js'
import { DrawnPlaces } from './drawn_places.js'
import { enterRelease, lookedAt, statement } from './enter_release.js'
import { Failed } from './failed.js'
import { LegPhoto } from './leg_photo.js'
import { sheetOf, walkForHold } from './leg_items.js'
import { usePlaces } from './places_of.js'
import { areaOf } from './standing.js'

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props */
export function Hold({ job, record, definitions, person, rest }) {
  const lot = record.lots[rest[0]]
  const [panel, why] = [Number(rest[1]), rest[2]]
  const here = ['hold', ...rest]
  const area = areaOf(lot)
  const hold = lot.holds.find((/** @type {any} */ one) => one.panel === panel && one.why === why)
  const places = usePlaces(record, lot, panel, lot.places)
  const frame = { title: say('hold.panel', { panel }), over: `${record.areas[area]?.name} · ${say(`day.why.${why}`)}`, back: path('job', job, 'day', lot.id), backTo: say('day') }
  if (!hold) return html`<${Screen} ...${frame}><p class="big">${say('hold.none')}</p><//>`
  const walk = walkForHold(record, definitions, person, lot, panel, why)
  const seen = lookedAt(record, area, panel, walk)
  if (hold.state !== 'open') return html`<${Screen} ...${frame}><${Told} ...${{ job, record, hold }} /><a class="press main plain" href=${frame.back} data-name="to-day"><span class="label">${say('stop.back')}</span></a><//>`
  if (why === 'failed') return html`<${Screen} ...${frame}><${Failed} ...${{ job, record, definitions, person, lot, area, panel, walk, here }} /><${Care} /><//>`
  const sheet = sheetOf(definitions, why)
  const release = async () => {
    await enterRelease({ job, record, person, lot, area, panel, why, seen, walk })
    go('job', job, 'day', lot.id)
  }
  return html`<${Screen} ...${frame}>
    <p class="big">${say(`hold.what.${why}`, { panel })}</p>
    ${!walk && html`<a class="press main" href=${path('job', job, 'start', 'then', ...here)} data-name="begin-look"><span class="label">${say('hold.begin')}</span><span class="under">${say('hold.begin.under')}</span></a>`}
    ${walk && sheet && html`<${Sheet} ...${{ job, record, definition: sheet, walk, person, station: null, locked: false, then: here }} />`}
    ${walk && places && places.length > 0 && html`<${Part} name=${say('hold.places')}><${DrawnPlaces} ...${{ job, record, definitions, walk, lot, area, panel, places, here }} quiet /><//>`}
    ${walk && html`<${Part} name=${say('leg')}><${LegPhoto} ...${{ job, record, person, walk, lot, panel }} /><//>`}
    <${Part} name=${say('release')}>
      ${!seen && html`<p class="problem" data-name="unseen"><strong>▲ ${say('release.nobody_looked')}</strong></p>`}
      <p class="statement">${statement(why, null, seen, panel)}</p>
      <p>${person.name}, ${say(`role.${person.role}`)}</p>
      ${seen ? html`<${MainAction} name="release" label=${say('release.do', { panel })} under=${say('release.under')} run=${release} />`
        : html`<${Twice} name="release" label=${say('release.do', { panel })} ask=${say('release.nobody_looked.sure', { panel })} run=${release} />`}
    <//>
    <${Care} />
  <//>`
}

/** A hold that waits for nobody any more, or not yet. @param {{job: string, record: any, hold: any}} props */
function Told({ job, record, hold }) {
  const people = usePeople(job)
  const given = /** @type {any} */ (Object.values(record.releases ?? {}).find((/** @type {any} */ one) => one.heads.includes(hold.release)))
  return html`<p class=${hold.state === 'covered_against' ? 'problem' : 'done-bar'} data-name="hold-state" data-state=${hold.state}><strong>${say(`hold.state.${hold.state}`, { panel: hold.panel })}</strong></p>
    ${hold.unseen && html`<p class="problem"><strong>▲ ${say('release.nobody_looked')}</strong></p>`}
    ${given && html`<p class="statement">${given.statement}</p><p>${signed(people, given)}, ${clock(given.at)}</p>`}`
}
