// What a new report is to be: what it speaks of, and in which form. The office makes it while this phone does other things.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { Choice } from '../frame/choice.js'
import { MainAction } from '../frame/main_action.js'
import { Screen } from '../frame/screen.js'
import { tell } from '../office/asked.js'
import { about, kindName } from './name.js'

const FORM = /** @type {[string, string[]][]} */ ([['language', ['en', 'es']], ['paper', ['letter', 'a4']], ['units', ['US', 'SI']]])

/** @param {{job: string, record: any, definitions: any[]}} props */
export function Wanted({ job, record, definitions }) {
  const { language, paper, units } = record.job
  const [want, setWant] = useState(/** @type {any} */ ({ kind: 'closeout', walk: '', lot: '', language, paper, units }))
  const change = (/** @type {any} */ more) => setWant((/** @type {any} */ old) => ({ ...old, ...more }))
  const there = parts(record, definitions)
  const kinds = ['closeout', ...Object.keys(there).filter((kind) => there[kind].options.length)]
  const part = there[want.kind]
  const chosen = part && (want[part.name] || (part.options.length === 1 ? part.options[0].value : ''))
  const named = !part || Boolean(chosen)
  const run = async () => {
    const scope = part ? { [part.name]: chosen } : {}
    await tell('POST', `/api/jobs/${job}/reports`, { kind: want.kind, ...scope, language: want.language, paper: want.paper, units: want.units })
    go('job', job, 'report')
  }
  return html`<${Screen} title=${say('reports.new')} over=${record.job.name} back=${path('job', job, 'report')} backTo=${say('reports')}>
    <p>${say('reports.new.what')}</p>
    <${Choice} name="kind" label=${say('reports.kind')} value=${want.kind} onChange=${(/** @type {string} */ kind) => change({ kind })}
      options=${kinds.map((kind) => ({ value: kind, label: kindName(kind), under: say(`reports.kind.${kind}.under`) }))} />
    ${part && html`<${Choice} name=${part.name} label=${say(`reports.which.${want.kind}`)} value=${chosen} onChange=${(/** @type {string} */ id) => change({ [part.name]: id })} options=${part.options} />`}
    ${FORM.map(([name, options]) => html`<${Choice} key=${name} name=${name} label=${say(`reports.${name}`)} value=${want[name]} onChange=${(/** @type {string} */ one) => change({ [name]: one })}
      options=${options.map((value) => ({ value, label: say(`reports.${name}.${value}`) }))} />`)}
    <${MainAction} name="ask-report" label=${say('reports.ask')} under=${named ? '' : say('reports.wants_part')} disabled=${!named} run=${run} />
  <//>`
}

/** The walks and audits that this phone knows, the newest first. @param {any} record @param {any[]} definitions
 * @returns {Record<string, {name: string, options: {value: string, label: string}[]}>} */
function parts(record, definitions) {
  const newest = (/** @type {any[]} */ things) => things.sort((a, b) => (a.at < b.at ? 1 : -1))
  const walks = newest(Object.values(record.walks))
  const audits = newest(Object.values(record.lots ?? {}).filter((/** @type {any} */ lot) => lot.purpose === 'audit'))
  return {
    walk: { name: 'walk', options: walks.map(({ id }) => ({ value: id, label: about(record, definitions, { walk: id }) })) },
    audit: { name: 'lot', options: audits.map(({ id }) => ({ value: id, label: about(record, definitions, { lot: id }) })) },
  }
}
