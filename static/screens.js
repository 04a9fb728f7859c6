// Which screen an address names.

import { html, useEffect, useErrorBoundary } from './frame/view.js'
import { PartSeen } from './frame/part_seen.js'
import { useRecord } from './frame/record.js'
import { Broken, Opening, Lost, NotYet } from './frame/opening.js'
import { BeforeRecording } from './phone/before_recording.js'
import { SignIn } from './phone/sign_in.js'
import { Who } from './phone/who.js'
import { Phone } from './phone/phone.js'
import { Unsent } from './phone/unsent.js'
import { Copy } from './phone/copy.js'
import { Missing } from './phone/missing.js'
import { Jobs } from './jobs/jobs.js'
import { Job } from './jobs/job.js'
import { Instruments } from './jobs/instruments.js'
import { Approved } from './roof/approved.js'
import { Area } from './roof/area.js'
import { PlanScreen } from './roof/plan_screen.js'
import { Drawing } from './draw/drawing.js'
import { Fit } from './fit/fit.js'
import { Start } from './walk/start.js'
import { Walk } from './walk/walk.js'
import { Place } from './walk/place.js'
import { Station } from './walk/station.js'
import { Item } from './walk/item.js'
import { SignOff } from './walk/sign_off.js'
import { Report } from './report/report.js'
import { Day } from './day/day.js'
import { DayRecord } from './day_record/day_record.js'
import { Stop } from './day/stop.js'
import { Hold } from './day/hold.js'
import { Night } from './day/night.js'
import { Card } from './card/card.js'
import { Lot } from './lot/lot.js'
import { Series } from './lot/series.js'
import { Coverage } from './lot/coverage.js'
import { Audit } from './lot/audit.js'
import { Sampling } from './lot/sampling.js'
import { People } from './office/people.js'
import { FirmScreen } from './office/firm.js'
import { Invite } from './office/invite.js'
import { Reviewers } from './office/reviewers.js'
import { Devices } from './office/devices.js'
import { Apart } from './office/apart.js'
import { Bring } from './office/bring.js'
import { Package } from './office/package.js'
import { Trail } from './office/trail.js'
import { Countersign } from './office/countersign.js'
import { Join } from './office/join.js'
import { Findings } from './finding/findings.js'
import { Finding } from './finding/finding.js'
import { Raise } from './finding/raise.js'
import { Assign } from './finding/assign.js'
import { Correct } from './finding/correct.js'
import { Recheck } from './finding/recheck.js'
import { Concede } from './finding/concede.js'
import { Reopen } from './finding/reopen.js'
import { Tomorrow } from './finding/tomorrow.js'
import { Doubts } from './doubt/doubts.js'
import { Doubt } from './doubt/doubt.js'
import { Trends } from './trends/trends.js'
import { Survey } from './survey/survey.js'
import { SurveyFound } from './survey/found.js'
import { SurveyAsk } from './survey/ask.js'

const OUTSIDE = /** @type {Record<string, any>} */ ({ 'sign-in': SignIn, who: Who, phone: Phone, unsent: Unsent, copy: Copy, missing: Missing, join: Join })
const INSIDE = /** @type {Record<string, any>} */ ({
  '': Job, approved: Approved, area: Area, draw: Drawing, plan: PlanScreen, start: Start, walk: Walk, place: Place,
  station: Station, item: Item, sign: SignOff, report: Report, card: Card, instruments: Instruments, fit: Fit,
  day: Day, stop: Stop, hold: Hold, night: Night, 'day-record': DayRecord,
  lot: Lot, trends: Trends, series: Series, coverage: Coverage, audit: Audit, sampling: Sampling,
  people: People, firm: FirmScreen, invite: Invite, reviewers: Reviewers, devices: Devices, apart: Apart, bring: Bring, package: Package, trail: Trail, countersign: Countersign,
  findings: Findings, finding: Finding, 'new-finding': Raise, assign: Assign, correct: Correct, recheck: Recheck,
  concede: Concede, reopen: Reopen, tomorrow: Tomorrow, doubts: Doubts, doubt: Doubt,
  survey: Survey, 'survey-found': SurveyFound, 'survey-ask': SurveyAsk,
})

/** Screens that keep work: shown only where the window can be trusted with it, or is known not to be. */
const RECORDS = new Set(['draw', 'start', 'walk', 'place', 'station', 'item', 'sign', 'instruments', 'fit', 'day', 'stop', 'hold', 'night', 'day-record',
  'audit', 'sampling', 'new-finding', 'assign', 'correct', 'recheck', 'concede', 'reopen', 'survey-ask'])

/** What a screen speaks of, by the first id in its address: a thing just saved is in the record a moment later. */
const SPEAKS_OF = /** @type {Record<string, string>} */ ({ approved: 'assemblies', area: 'areas', fit: 'areas', lot: 'lots', walk: 'walks', place: 'walks', sign: 'walks', station: 'stations', stop: 'lots', hold: 'lots', night: 'lots',
  finding: 'findings', assign: 'findings', correct: 'findings', recheck: 'findings', concede: 'findings', reopen: 'findings' })

/** @param {string[]} route @param {any} person @param {(invented: boolean) => void} tellInvented */
export function screenFor(route, person, tellInvented) {
  const [first, job, name, ...rest] = route
  if (first === 'job' && job) {
    return html`<${InJob} job=${job} name=${name ?? ''} rest=${rest} person=${person} tell=${tellInvented} />`
  }
  const Outside = OUTSIDE[first] ?? Jobs
  return html`<${Outside} person=${person} rest=${route.slice(1)} tell=${tellInvented} />`
}

/** A screen that speaks of one job: it waits for the job's record. @param {any} props */
function InJob({ job, name, rest, person, tell }) {
  const known = useRecord(job)
  const [fault, mend] = useErrorBoundary()
  const invented = known.record?.job?.invented === true
  useEffect(() => { tell(invented) }, [invented])
  if (fault) return html`<${Broken} fault=${fault} mend=${mend} job=${job} />`
  if (!known.record) return html`<${Opening} fault=${known.fault} />`
  const Inside = INSIDE[name]
  if (!Inside || !known.record.job) return html`<${Lost} />`
  if (SPEAKS_OF[name] && !known.record[SPEAKS_OF[name]][rest[0]]) return html`<${NotYet} key=${rest[0]} job=${job} />`
  return html`${known.part && html`<${PartSeen} />`}
    <${BeforeRecording} records=${RECORDS.has(name)}>
      <${Inside} key=${name === 'plan' ? name : [name, ...rest].join('/')} job=${job} record=${known.record} definitions=${known.definitions}
        person=${person} rest=${rest} /><//>`
}
