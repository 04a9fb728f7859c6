// "No work today, because…": the short way, a reason and a signature.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { Choice } from '../frame/choice.js'
import { MainAction } from '../frame/main_action.js'
import { TextField } from '../frame/text_field.js'
import { PRESSED } from './pressed.js'
import { Several } from './rest.js'

/** @param {{draft: any, change: (patch: any) => any, known: any, person: any, sign: (statement: string) => any}} props */
export function Idle({ draft, change, known, person, sign }) {
  const statement = say('day_record.statement.no_work')
  const needs = [!draft.crew.trim() && 'day_record.needs.crew', !draft.why && !draft.why_words.trim() && 'day_record.needs.why'].filter(Boolean)
  return html`<div class="stack brief" data-name="no-work">
    ${known?.work_done.length > 0 && html`<p class="problem" role="alert"><strong>▲ ${say('day_record.no_work.set')}</strong></p>`}
    <${Choice} name="why" label=${say('day_record.no_work.why')} value=${draft.why} onChange=${(/** @type {string} */ why) => change({ why: draft.why === why ? '' : why })} options=${PRESSED.why.map((one) => ({ value: one, label: say(`day_record.why.${one}`) }))} />
    <${TextField} name="why-words" label=${say('day_record.no_work.words')} value=${draft.why_words} onChange=${(/** @type {string} */ why_words) => change({ why_words })} />
    <details><summary class="press">${say('day_record.tied')}</summary><${Several} name="tied" ...${{ draft, change }} /></details>
    <p class="statement">${statement}</p>
    <${MainAction} name="sign-idle" label=${say('day_record.no_work.sign')} disabled=${needs.length > 0} run=${() => sign(statement)}
      under=${needs.length ? needs.map((one) => say(String(one))).join(' ') : say('day_record.sign.under', { name: person.name, role: say(`role.${person.role}`) })} />
    <button type="button" class="press" data-name="not-idle" onClick=${() => change({ idle: false })}>${say('day_record.no_work.not')}</button>
  </div>`
}
