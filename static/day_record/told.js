// A day's record as it was written, by one of its authors.

import { html } from '../frame/view.js'
import { LANGUAGES, language, say } from '../words/say.js'
import { clock } from '../frame/age.js'
import { shown } from '../frame/amount.js'
import { Facts } from '../frame/facts.js'
import { usePeople } from '../frame/people.js'
import { signedAs, signer } from '../frame/signer.js'
import { Picture } from '../walk/pair.js'
import { MaterialsTold } from './materials.js'
import { worded } from './there.js'

/** What was signed is never translated: it stands in the language in which it was shown. @param {any} entry */
function spokenIn({ statement, no_work }) {
  if (statement === say(no_work === null ? 'day_record.statement' : 'day_record.statement.no_work')) return language()
  return LANGUAGES.find((one) => one !== language())
}

/** @param {{job: string, record: any, entry: any}} props */
export function DayTold({ job, record, entry }) {
  const people = usePeople(job)
  const weather = entry.weather.map((/** @type {any} */ row) => [row.at, row.sky && say(`sky.${row.sky}`), row.wind && say(`wind.${row.wind}`), row.metal && shown(row.metal)].filter(Boolean).join(' ')).join('; ')
  const rows = /** @type {[string, string][]} */ ([
    [say('day_record.no_work'), entry.no_work === null ? '' : worded('why', entry.no_work)],
    [say('day_record.people'), entry.head_count === null ? '' : String(entry.head_count)],
    [say('day_record.weather'), weather],
    [say('day_record.item.work'), entry.work],
    [say('day_record.item.plant'), entry.equipment.map((/** @type {any} */ row) => [worded('equipment', row.what), row.operator, row.setting, row.hours && `${row.hours} h`].filter(Boolean).join(', ')).join('; ')],
    [say('day_record.instructions'), entry.instructions.map((/** @type {any} */ row) => [row.by, worded('text', row.said)].filter(Boolean).join(': ')).join('; ')],
    [say('day_record.delays'), entry.delays.map((/** @type {any} */ row) => [worded('why', row.why), row.hours && `${row.hours} h`].filter(Boolean).join(' ')).join('; ')],
    [say('day_record.submittals'), worded('text', entry.submittals)],
    [say('day_record.offsite'), worded('text', entry.offsite)],
    [say('day_record.safety'), worded('safety', entry.safety)],
    [say('day_record.tied'), worded('tied', entry.tied_down)],
  ])
  const photos = [...new Set([...entry.materials.flatMap((/** @type {any} */ row) => row.photos), ...entry.photos])]
  return html`<div class="statement stack" data-name="day-told" data-by=${entry.by}>
    <p class="over">${say('day_record.by', { name: signer(people, entry), role: say(`role.${signedAs(people, entry)}`), at: clock(entry.at) })}</p>
    ${entry.objection && html`<p class="problem"><strong>▲ ${say('day_record.no_authority')}</strong></p>`}
    <${Facts} rows=${rows} />
    <${MaterialsTold} record=${record} rows=${entry.materials} />
    ${photos.map((sha256, n) => html`<${Picture} key=${sha256} ...${{ job, sha256 }} name=${say('day_record.photo.day', { n: n + 1 })} />`)}
    <p lang=${spokenIn(entry)}>“${entry.statement}”</p>
  </div>`
}
