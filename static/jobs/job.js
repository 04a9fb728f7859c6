// The home of a job: what is to be done today, its drawn roof and what was found; all else behind a heading with its count.

import { html } from '../frame/view.js'
import { pick, say } from '../words/say.js'
import { path } from '../frame/route.js'
import { clock } from '../frame/age.js'
import { Folded } from '../frame/folded.js'
import { Screen } from '../frame/screen.js'
import { DoubtsPart } from '../doubt/part.js'
import { FindingsPart } from '../finding/part.js'
import { sorted } from '../roof/order.js'
import { RoofPart } from './roof_part.js'
import { OfficePart } from '../office/job_part.js'
import { frontOf } from './front_of.js'

const FRONT = ['foreman', 'inspector'] // who works in the crew's rhythm sees the day first
const LOTS = ['series', 'coverage', 'audit', 'sampling']
const WALK = [...FRONT, 'reviewer'] // nobody else's walk counts: the report is what they come for

/** @param {{job: string, record: any, definitions: any[], person: any}} props */
export function Job({ job, record, definitions, person }) {
  const areas = sorted(record.areas, 'name')
  const walks = Object.values(record.walks).sort((/** @type {any} */ a, /** @type {any} */ b) => (a.at < b.at ? 1 : -1))
  const open = /** @type {any} */ (walks.find((/** @type {any} */ walk) => !walk.signoff && walk.by === person.id))
  const front = areas.length > 0 && FRONT.includes(person.role) ? frontOf(record, person) : null
  const mayWalk = WALK.includes(person.role)
  return html`<${Screen} title=${record.job.name} over=${record.job.place} back=${path()} backTo=${say('jobs')} wide>
    ${front && html`<a class=${front.held ? 'press main held' : 'press main'} href=${path('job', job, 'day')} data-name="day"><span class="label">${say('day')}</span><span class="under">${front.text}</span></a>`}
    ${open
      ? html`<a class=${front ? 'press tall' : 'press main'} href=${path('job', job, 'walk', open.id)} data-name="go-on"><span class="label">${say('job.go_on')}<span class="under">${say('walk.begun', { at: clock(open.at) })}</span></span></a>`
      : mayWalk ? html`<a class=${areas.length && !front ? 'press main' : 'press'} href=${path('job', job, 'start')} data-name="start"><span class="label">${say('job.start')}</span></a>`
      : html`<${ReportLink} job=${job} main=${areas.length > 0} />`}
    ${areas.length > 0 && html`<a class="press tall" href=${path('job', job, 'card')} data-name="card"><span class="label">${say('card')}<span class="under">${say('card.open.under')}</span></span><span class="go" aria-hidden="true">→</span></a>`}
    <${RoofPart} ...${{ job, record, definitions, person }} />
    <${DoubtsPart} ...${{ job, record }} />
    <${FindingsPart} ...${{ job, record, definitions }} />
    ${(open || mayWalk) && html`<${ReportLink} job=${job} />`}
    <${Folded} id="lots" name=${say('job.lots')} n=${3 + LOTS.length}>
      <a class="press" href=${path('job', job, 'day-record')} data-name="day-records"><span class="label">${say('day_record.list')}</span><span class="go" aria-hidden="true">→</span></a>
      <a class="press tall" href=${path('job', job, 'trends')} data-name="trends"><span class="label">${say('trends')}<span class="under">${say('trends.under')}</span></span><span class="go" aria-hidden="true">→</span></a>
      <a class="press tall" href=${path('job', job, 'survey')} data-name="survey"><span class="label">${say('survey')}<span class="under">${say('survey.open.under')}</span></span><span class="go" aria-hidden="true">→</span></a>
      ${LOTS.map((name) => html`<a key=${name} class="press" href=${path('job', job, name)} data-name=${name}><span class="label">${say(name === 'coverage' ? 'coverage.job' : name)}</span><span class="go" aria-hidden="true">→</span></a>`)}
    <//>
    <${Folded} id="walks" name=${say('job.walks')} n=${walks.length}>
      ${walks.length === 0 && html`<p>${say('job.no_walks')}</p>`}
      ${walks.map((/** @type {any} */ walk) => html`<a key=${walk.id} class="press tall" href=${path('job', job, 'walk', walk.id)} data-name="walk">
        <span class="label">${pick(definitions.find((one) => one.digest === walk.definition)?.title) ?? say('walk')}<span class="under">${clock(walk.at)} · ${walk.crew ? walk.crew + ' · ' : ''}${walk.signoff ? '✓ ' + say('walk.signed') : '… ' + say('walk.open')}</span></span>
        <span class="go" aria-hidden="true">→</span></a>`)}
    <//>
    <${Folded} id="approved" name=${say('job.approved')} n=${Object.keys(record.assemblies).length + 1}>
      ${sorted(record.assemblies, 'name').map((one) => html`<a key=${one.id} class="press tall" href=${path('job', job, 'approved', one.id)} data-name="approved">
        <span class="label">${one.name}<span class="under">${one.approval?.reference ?? ''}</span></span><span class="go" aria-hidden="true">→</span></a>`)}
      <a class="press" href=${path('job', job, 'instruments')} data-name="instruments">${say('instruments')}</a>
    <//>
    <${OfficePart} job=${job} person=${person} />
  <//>`
}

/** @param {{job: string, main?: boolean}} props */
function ReportLink({ job, main }) {
  return html`<a class=${main ? 'press main' : 'press'} href=${path('job', job, 'report')} data-name="report"><span class="label">${say('report')}</span></a>`
}
