// One finding in a list: its state, its weight, what it is and where.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { StateMark, Weight } from './states.js'
import { note, title, where } from './told.js'

/** @param {{job: string, record: any, definitions: any[], finding: any, press?: any}} props `press`: a control under the row */
export function Row({ job, record, definitions, finding, press }) {
  const said = note(finding)
  const day = finding.assignment?.by_day
  return html`<li class="stack"><a class=${`press tall found ${finding.state}`} href=${path('job', job, 'finding', finding.id)} data-name="finding" data-state=${finding.state} data-severity=${finding.severity}>
    <${StateMark} state=${finding.state} />
    <span class="label">${say(`finding.state.${finding.state}`)}: ${title(definitions, finding)}
      <span class="under">${where(record, finding)}${said ? ` · “${said}”` : ''}</span>
      <span class="under"><${Weight} severity=${finding.severity} />${finding.crew ? ` · ${finding.crew}` : ''}${day ? ` · ${say('finding.by_day', { day })}` : ''}</span></span>
    <span class="go" aria-hidden="true">→</span></a>${press}</li>`
}
