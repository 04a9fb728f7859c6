// The walk that a draw's places are looked at in: an audit has the audit's own checklist, a rework any whole walk.

import { html } from '../frame/view.js'
import { pick, say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { clock } from '../frame/age.js'
import { MainAction } from '../frame/main_action.js'
import { mayBegin } from '../checklist/applies.js'
import { loadDraft, saveDraft } from '../storage/drafts.js'

/** The definition to walk with, or undefined. @param {any[]} definitions @param {any} person @param {any} lot */
function walkedWith(definitions, person, lot) {
  const mine = mayBegin(definitions, person).filter((one) => one.per === 'walk')
  return lot.purpose === 'audit' ? mine.find((one) => one.id === 'audit-walk') ?? mine[0] : mine.find((one) => one.id !== 'audit-walk') ?? mine[0]
}

/** The person's open walk over one of the lot's areas. @param {any} record @param {any[]} definitions @param {any} person @param {any} lot */
export function walkOf(record, definitions, person, lot) {
  const audits = definitions.filter((one) => one.id === 'audit-walk').map((one) => one.digest)
  return Object.values(record.walks).find((/** @type {any} */ walk) => !walk.signoff && walk.by === person.id
    && lot.population.every((/** @type {any} */ row) => walk.areas.includes(row.area))
    && (lot.purpose !== 'audit' || audits.length === 0 || person.role !== 'inspector' || audits.includes(walk.definition)))
}

/** @param {{job: string, definitions: any[], person: any, lot: any, walk: any}} props */
export function WalkOf({ job, definitions, person, lot, walk }) {
  const own = walkedWith(definitions, person, lot)
  const begin = async () => {
    const then = ['audit', lot.id]
    const key = `walk/${job}/new/${then.join('/')}`
    const areas = [...new Set(lot.population.map((/** @type {any} */ row) => row.area))]
    await saveDraft(person.id, key, { ...await loadDraft(person.id, key), definition: own.digest, areas })
    go('job', job, 'start', 'then', ...then)
  }
  if (walk) return html`<a class="press tall" href=${path('job', job, 'walk', walk.id)} data-name="to-walk"><span class="label">${pick(definitions.find((one) => one.digest === walk.definition)?.title) ?? say('walk')}<span class="under">${say('walk.begun', { at: clock(walk.at) })}</span></span><span class="go" aria-hidden="true">→</span></a>`
  if (!lot.drawn.some((/** @type {any} */ one) => ['next', 'due', 'part'].includes(one.state))) return null
  if (!own) return html`<p class="problem"><strong>▲ ${say('walk.no_definition', { role: say(`role.${person.role}`) })}</strong></p>`
  return html`<${MainAction} name="begin-walk" label=${say('audit.begin_walk')} under=${pick(own.title) ?? own.id} run=${begin} />`
}
