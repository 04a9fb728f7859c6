// What the person holding the phone may do in this job, as the office decides it.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { Part } from '../frame/screen.js'
import { areaNames } from './area_names.js'

const RIGHTS = ['releases', 'rechecks', 'closes', 'concedes', 'signs', 'admits', 'exports', 'invites', 'links', 'revokes', 'reads_trail', 'imports', 'countersigns']

/** @param {{record: any, rights: any}} props */
export function Rights({ record, rights }) {
  return html`<${Part} name=${say('rights')}>
    <p class="big">${say(`role.${rights.role}`)} · ${areaNames(record, rights.areas)}</p>
    <ul class="rights" data-name="rights">${RIGHTS.map((name) => html`<li key=${name} data-right=${name} data-may=${String(rights[name])}>
      <span aria-hidden="true">${rights[name] ? '✓' : '—'}</span> ${say(rights[name] ? 'rights.may' : 'rights.may_not', { what: say(`right.${name}`) })}</li>`)}</ul>
  <//>`
}
