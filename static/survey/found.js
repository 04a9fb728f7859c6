// Everything ever recorded around a place, from the phone's own record: no signal is needed to be told.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { shown } from '../frame/amount.js'
import { Folded } from '../frame/folded.js'
import { MainAction } from '../frame/main_action.js'
import { Lost } from '../frame/opening.js'
import { usePeople } from '../frame/people.js'
import { Problem } from '../frame/problem.js'
import { Part, Screen } from '../frame/screen.js'
import { useAuthority } from '../finding/authority.js'
import { tell } from '../office/asked.js'
import { placeIn, stepsOf } from './address.js'
import { Approved } from './approved.js'
import { Asked } from './asked.js'
import { Beside } from './beside.js'
import { Event } from './event.js'
import { Unseen } from './unseen.js'
import { useSurvey } from './use_survey.js'
import { Wear } from './wear.js'

/** @param {{job: string, record: any, person: any, rest: string[]}} props `rest`: the place */
export function SurveyFound({ job, record, person, rest }) {
  const place = placeIn(record, rest)
  const people = usePeople(job)
  const may = (useAuthority()?.survey ?? []).includes(person.role)
  const { told, fault } = useSurvey(record, place)
  if (!place) return html`<${Lost} />`
  const report = async () => {
    const { language, paper, units } = record.job
    await tell('POST', `/api/jobs/${job}/reports`, { kind: 'survey', ...place, language, paper, units })
    go('job', job, 'report')
  }
  const own = (told?.asked ?? []).some((/** @type {any} */ one) => one.by === person.id)
  const facts = { area: record.areas[place.area].name, panel: place.panel, at: shown(place.from_low_end), radius: shown(place.radius) }
  return html`<${Screen} title=${say('survey.found.title')} over=${record.job.name} back=${path('job', job, 'survey')} backTo=${say('survey')} wide>
    <p class="big" data-name="survey-place">${say('survey.found.place', facts)}</p>
    <${Problem} fault=${fault} />
    ${!told && !fault && html`<p role="status">${say('survey.found.counting')}</p>`}
    ${told && html`
      <p class="hint">${say('survey.place.what')}</p>
      <${Part} name=${say('survey.found.unseen')}><${Unseen} ...${{ record, told }} /><//>
      <${Part} name=${say('survey.found.approved')}><${Approved} ...${{ record, told }} /><//>
      <${Part} name=${say('survey.found.beside')}><${Beside} ...${{ job, told }} /><//>
      <${Folded} id="survey-events" name=${say('survey.found.in_order')} n=${told.events.length}>
        ${told.events.length === 0 ? html`<p>${say('survey.found.nothing')}</p>`
          : html`<ol class="rows">${told.events.map((/** @type {any} */ event) => html`<${Event} key=${event.digest} ...${{ job, record, people, event, unit: told.place.unit }} />`)}</ol>`}
      <//>
      <${Folded} id="survey-wear" name=${say('survey.found.wear')} n=${told.asked.filter((/** @type {any} */ one) => one.wear).length}><${Wear} ...${{ record, told }} /><//>
      <${Folded} id="survey-asked" name=${say('survey.found.asked')} n=${told.asked.length}><${Asked} ...${{ record, told, people }} /><//>
      <${MainAction} quiet name="survey-report" label=${say('survey.ask.report')} run=${report} />
      ${may ? html`<a class="press main" href=${path('job', job, 'survey-ask', ...stepsOf(place))} data-name="survey-ask"><span class="label">${say(own ? 'survey.ask.again' : 'survey.ask')}</span><span class="under">${say('survey.ask.under')}</span></a>`
        : html`<p class="hint" data-name="survey-role">${say('survey.ask.role')}</p>`}`}
  <//>`
}
