// Where something failed the cover-up stops: put right and looked at again, looked at both ways until three panels
// running are good, or the finding left open and the work released over it, in somebody's name.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { useDraft } from '../frame/draft.js'
import { Part } from '../frame/screen.js'
import { Choice } from '../frame/choice.js'
import { MainAction } from '../frame/main_action.js'
import { Finding, looksSince } from './finding.js'
import { BothWays } from './both_ways.js'
import { enterRelease, statement } from './enter_release.js'

const WAYS = ['fixed', 'both_ways', 'finding_open']

/** @param {{job: string, record: any, definitions: any[], person: any, lot: any, area: string, panel: number, walk: any, here: string[]}} props */
export function Failed({ job, record, definitions, person, lot, area, panel, walk, here }) {
  const key = `failed/${lot.id}/${panel}`
  const [draft, change] = useDraft(person.id, key, { way: '' })
  if (!draft) return null
  const failed = failuresOn(record, area, panel)
  const sides = (lot.failed ?? []).filter((/** @type {any} */ one) => one.panel === panel)
  const running = (/** @type {any} */ one) => one.bounded && one.toward_start + one.toward_end > 0
  const done = /** @type {Record<string, boolean>} */ ({ finding_open: true, both_ways: sides.length > 0 && sides.every(running),
    fixed: failed.every((answer) => looksSince(record, answer).length > 0) })
  const release = async () => {
    await enterRelease({ job, record, person, lot, area, panel, why: 'failed', way: draft.way, seen: true, walk, sides, draft: key })
    go('job', job, 'day', lot.id)
  }
  return html`<p class="big">${say('hold.what.failed', { panel })}</p>
    <ul class="rows">${failed.map((answer) => html`<${Finding} key=${answer.id} ...${{ job, record, definitions, walk, lot, answer, here }} />`)}</ul>
    <${Choice} name="way" label=${say('failed.way')} value=${draft.way} onChange=${(/** @type {string} */ way) => change({ way })}
      options=${WAYS.map((way) => ({ value: way, label: say(`failed.${way}`), under: say(`failed.${way}.under`) }))} />
    ${draft.way === 'fixed' && !done.fixed && html`<p class="problem"><strong>▲ ${say('failed.look_again')}</strong></p>`}
    ${draft.way === 'both_ways' && html`<${BothWays} ...${{ job, record, definitions, walk, lot, area, panel, here, failed, sides }} />`}
    ${draft.way && html`<${Part} name=${say('release')}>
      <p class="statement">${statement('failed', draft.way, true, panel, sides)}</p>
      <p>${person.name}, ${say(`role.${person.role}`)}</p>
      <${MainAction} name="release" label=${say('release.do', { panel })} under=${say('release.under')} run=${release} disabled=${!done[draft.way]} />
    <//>`}
    ${!walk && html`<a class="press" href=${path('job', job, 'start', 'then', ...here)} data-name="begin-look">${say('hold.begin')}</a>`}`
}

/** Answers that fail at places of this panel. @param {any} record @param {string} area @param {number} panel @returns {any[]} */
export function failuresOn(record, area, panel) {
  return Object.values(record.answers).filter((/** @type {any} */ one) => {
    const station = record.stations[one.station]
    return one.result === 'fail' && one.severity !== 'record' && station?.area === area && station.panel === panel
  })
}
