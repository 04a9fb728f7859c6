// Tomorrow's list of a crew: what to fix, where and why, with its picture; ticked on the phone, printed for the truck.

import { html, useState } from '../frame/view.js'
import { LANGUAGES, language, say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { useDraft } from '../frame/draft.js'
import { usePeople } from '../frame/people.js'
import { Screen } from '../frame/screen.js'
import { Choice } from '../frame/choice.js'
import { MainAction } from '../frame/main_action.js'
import { Language } from '../phone/language.js'
import { printIn } from '../card/print.js'
import { findingsInOrder } from '../roof/order.js'
import { Along } from './along.js'
import { Cautions } from './cautions.js'
import { ticksKey } from './drafts.js'
import { Task } from './task.js'
import { chosenCrew, crewsToday, isTicked, tasks, tickOf } from './tasks.js'

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props `rest`: the crew, as written */
export function Tomorrow({ job, record, definitions, person, rest }) {
  const [ticks, change] = useDraft(person.id, ticksKey(job), {})
  const [drawn, draw] = useState(0)
  const people = usePeople(job)
  const all = findingsInOrder(record)
  const crews = crewsToday(all)
  const crew = chosenCrew(crews, rest[0])
  const { fix, recheck } = tasks(all, crew)
  if (!ticks) return null
  const other = LANGUAGES.filter((code) => code !== language())
  // The list goes the way a crew walks; a severity that nobody told counts as the gravest, as in closing it.
  const gravest = fix.flatMap((one, n) => ((one.severity ?? 'critical') === 'critical' ? [n + 1] : []))
  const ticked = fix.filter((one) => isTicked(ticks, one)).length
  return html`<${Screen} title=${say('tomorrow')} over=${record.job.name} back=${path('job', job, 'findings')} backTo=${say('findings')} wide>
    <div class="task-choices"><${Language} />
      ${crews.length > 1 && html`<${Choice} name="crew" label=${say('tomorrow.crew')} value=${crew} onChange=${(/** @type {string} */ one) => go('job', job, 'tomorrow', one || '-')}
        options=${crews.map(({ crew: one, n }) => ({ value: one, label: one || say('tomorrow.no_crew'), under: say('tomorrow.n', { n }) }))} />`}</div>
    <section class="part tasks" data-name="list" data-crew=${crew}>
      <h2>${say('tomorrow.for', { crew: crew || say('tomorrow.no_crew') })}</h2>
      <p class="paper-only">${[say('tomorrow'), record.job.name, made(), ...(record.job.invented ? [say('invented')] : [])].join(' · ')}</p>
      ${fix.length === 0 && html`<p class="big">${say('tomorrow.none')}</p>`}
      ${gravest.length > 0 && html`<p class="problem" data-name="gravest"><strong>${say('tomorrow.critical', { numbers: gravest.join(', ') })}</strong></p>`}
      <${Cautions} />
      <ol class="task-list">${fix.map((finding, n) => html`<${Task} key=${`${finding.id}/${drawn}`} ...${{ job, record, definitions, finding, people, n: n + 1 }} ticked=${isTicked(ticks, finding)} tick=${(/** @type {boolean} */ on) => change({ [finding.id]: on ? tickOf(finding) : '' })} />`)}</ol>
      ${recheck.length > 0 && html`<p data-name="to-recheck">${say('tomorrow.recheck', { n: recheck.length })}</p>`}
      <p class="small">${say('not_the_engineer')}</p>
    </section>
    <div class="stack task-print">
      <${Along} ...${{ job, findings: [...fix, ...recheck] }} drawAgain=${() => draw((n) => n + 1)} />
      ${ticked > 0 && html`<p class="statement" role="status" data-name="ticked">${say('tomorrow.ticked', { n: ticked })}</p>`}
      ${fix.length > 0 && html`${other.map((code) => html`<div key=${code} lang=${code}><${MainAction} label=${say(`card.print.other.${code}`)} plain run=${() => printIn(code)} name=${'print-' + code} /></div>`)}
        <${MainAction} label=${say('tomorrow.print')} under=${say(`card.print.in.${language()}`)} run=${() => printIn(language())} name="print" />`}
    </div>
  <//>`
}

/** When the list was made, as the crew says it. */
function made() {
  return new Intl.DateTimeFormat(language(), { dateStyle: 'full', timeStyle: 'short' }).format(new Date())
}
