// A person picks between versions: the picked one is signed once more, as it stands, in place of all of them.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { MainAction } from '../frame/main_action.js'
import { enterCounted } from '../frame/enter.js'
import { entryBody } from '../record/load.js'

// What somebody saw with their own eyes is not picked by another: they look, and say it themselves.
const PICKS = /** @type {Record<string, string[]>} */ ({ area: ['inspector', 'administrator'], assembly: ['administrator'], job: ['administrator'] })

/** @param {any} doubt @param {any} person whether they may pick one of these versions */
export function mayPick(doubt, person) {
  return doubt.code === 'versions' && doubt.n === doubt.entries.length && (PICKS[doubt.facts.kind] ?? []).includes(person.role)
}

/** @param {{job: string, doubt: any, one: any, person: any}} props */
export function KeepOne({ job, doubt, one, person }) {
  const keep = async () => {
    const body = await entryBody(one.digest)
    await enterCounted({ job, kind: doubt.facts.kind, subject: doubt.facts.other, body, replaces: doubt.entries.map((/** @type {any} */ each) => each.digest) })
  }
  return html`<${MainAction} plain name="keep-one" label=${say('doubt.keep_one')} under=${say('doubt.keep_one.under', { name: person.name })} run=${keep} />`
}
