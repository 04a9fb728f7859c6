// The reports of a job: those there are and those being made; one of them; what a new one is to be.

import { html } from '../frame/view.js'
import { List } from './list.js'
import { One } from './one.js'
import { Wanted } from './wanted.js'

/** @param {{job: string, record: any, definitions: any[], person: any, rest: string[]}} props */
export function Report({ job, record, definitions, person, rest }) {
  if (rest[0] === 'new') return html`<${Wanted} ...${{ job, record, definitions, person }} />`
  return rest[0] ? html`<${One} ...${{ job, record, definitions, number: Number(rest[0]) }} />` : html`<${List} ...${{ job, record, definitions }} />`
}
