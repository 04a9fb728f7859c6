// One finding: its state, where it is, what was required and found, its pictures and history, and the next thing to do.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { path } from '../frame/route.js'
import { usePeople } from '../frame/people.js'
import { signed, signer } from '../frame/signer.js'
import { Facts } from '../frame/facts.js'
import { Part, Screen } from '../frame/screen.js'
import { Against } from './against.js'
import { causeWords } from './cause.js'
import { History } from './history.js'
import { useAuthority } from './authority.js'
import { NotOffered } from './offer.js'
import { steps, waiting } from './offers.js'
import { Pictures } from './pictures.js'
import { StateMark, Weight } from './states.js'
import { askedBy, onPlan, problem, title, where } from './told.js'

const SCREENS = /** @type {Record<string, string>} */ ({ correction: 'correct', recheck: 'recheck', assignment: 'assign', concession: 'concede', reopening: 'reopen' })
const FIRST = /** @type {Record<string, string>} */ ({ open: 'correction', corrected: 'recheck', closed: 'reopening', conceded: 'reopening' })

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props */
export function Finding({ job, record, definitions, person, rest }) {
  const finding = record.findings[rest[0]]
  const authority = useAuthority()
  const people = usePeople(job)
  const plan = onPlan(job, record, finding)
  const place = finding.station ? path('job', job, 'station', finding.station) : finding.walk ? path('job', job, 'walk', finding.walk) : null
  const { definition } = askedBy(definitions, finding)
  return html`<${Screen} title=${title(definitions, finding)} over=${say('finding')} back=${path('job', job, 'findings')} backTo=${say('findings')}>
    <div class=${`finding-state ${finding.state}`} role="status" data-name="finding-state" data-state=${finding.state}>
      <p class="figure-line"><${StateMark} state=${finding.state} /> ${say(`finding.state.${finding.state}`)}</p>
      <p>${say(`finding.state.${finding.state}.means`, { name: signer(people, finding.state === 'conceded' ? finding.concession : waiting(finding)[0]) || '—' })}</p>
      <p><${Weight} severity=${finding.severity} /></p>
    </div>
    ${(finding.problems ?? []).map((/** @type {string} */ code) => html`<p key=${code} class="problem" data-name="finding-problem"><strong>▲ ${problem(code)}</strong></p>`)}
    <${Part} name=${say('finding.where')}>
      <p class="big">${where(record, finding)}</p>
      ${plan && html`<a class="press" href=${plan} data-name="on-plan"><span class="label">${say('finding.on_plan')}</span><span class="go" aria-hidden="true">→</span></a>`}
      ${place && html`<a class="press" href=${place} data-name="to-place"><span class="label">${say(finding.station ? 'finding.to_place' : 'finding.to_walk')}</span><span class="go" aria-hidden="true">→</span></a>`}
    <//>
    <${Part} name=${say('finding.against')}><${Against} ...${{ definitions, finding }} />
      <${Pictures} ...${{ job, photos: finding.photos }} name=${say('finding.picture')} /><//>
    <${Part} name=${say('finding.assigned')}><${Assigned} ...${{ finding, definition, people }} /><//>
    <${Part} name=${say('finding.history')}><${History} ...${{ job, finding, people }} /><//>
    ${authority && html`<${Next} ...${{ job, finding, authority, offers: steps(finding, person, authority) }} />`}
  <//>`
}

/** @param {{finding: any, definition: any, people: import('../frame/people.js').People}} props */
function Assigned({ finding, definition, people }) {
  const made = finding.assignment
  if (!made) return html`<p>${say('finding.nobody', { crew: finding.crew || '—' })}</p>`
  return html`<${Facts} rows=${[[say('assign.firm'), made.firm], [say('assign.crew'), made.crew], [say('finding.until'), made.by_day ?? ''],
    [say('assign.cause'), causeWords(definition, made.cause)], [say('assign.note'), made.note], [say('finding.assigned_by'), signed(people, made)]]} />`
}

/** What may be done: the first of it large, the last thing on the screen. @param {{job: string, finding: any, authority: any, offers: Record<string, {offered: boolean, why: string}>}} props */
function Next({ job, finding, authority, offers }) {
  const offered = Object.keys(offers).filter((kind) => offers[kind].offered)
  const first = offered.find((kind) => kind === FIRST[finding.state])
  const others = offered.filter((kind) => kind !== first)
  const to = (/** @type {string} */ kind) => path('job', job, SCREENS[kind], finding.id)
  return html`
    ${offers.recheck && !offers.recheck.offered && html`<${NotOffered} ...${{ finding, offer: { ...offers.recheck, roles: authority.recheck } }} />`}
    ${others.map((kind) => html`<a key=${kind} class="press" href=${to(kind)} data-name=${SCREENS[kind]}><span class="label">${say(`finding.do.${kind}`)}</span></a>`)}
    ${first && html`<a class=${first === 'reopening' ? 'press main plain' : 'press main'} href=${to(first)} data-name=${SCREENS[first]}><span class="label">${say(`finding.do.${first}`)}</span><span class="under">${say(`finding.do.${first}.under`)}</span></a>`}`
}
