// One entry kept apart: what it says it is, whose, when; and the signed word that lets it in.

import { html, useState } from '../frame/view.js'
import { known as knownWord, say } from '../words/say.js'
import { clock } from '../frame/age.js'
import { useDraft } from '../frame/draft.js'
import { enter } from '../frame/enter.js'
import { MainAction } from '../frame/main_action.js'
import { TextField } from '../frame/text_field.js'
import { when } from './when.js'

/** @param {{job: string, one: any, person: any}} props `one`: as the office tells of it */
export function KeptApart({ job, one, person }) {
  const key = `office-admission/${job}/${one.digest}`
  const [draft, change] = useDraft(person.id, key, { reason: null })
  const [signed, setSigned] = useState(false)
  if (!draft) return null
  const admit = async () => {
    await enter({ job, kind: 'admission', subject: one.digest, draft: key,
      body: { entry: one.digest, reason: draft.reason.trim(), name: person.name, role: person.role } })
    setSigned(true)
  }
  const why = `apart.reason.${one.reason}`
  return html`<li class="row" data-name="kept-apart" data-digest=${one.digest} data-signed=${String(signed)}>
    <strong>${say(`kind.${one.kind}`)} · ${one.who}</strong>
    <span>${say('apart.said', { at: clock(one.at) })} · ${say('apart.came', { at: when(one.received_at) })}</span>
    <span class="line">${knownWord(why) ? say(why) : one.reason}</span>
    ${one.photos > 0 && html`<span class="line">${one.held === one.photos ? '✓' : '▲'} ${say('apart.photos', { held: one.held, n: one.photos })}</span>`}
    <span class="hint line">${say('apart.digest', { digest: one.digest.slice(0, 12) })}</span>
    ${signed ? html`<p class="done-bar line" role="status">✓ ${say('apart.admitted')}</p>`
    : draft.reason === null
      ? html`<button type="button" class="press" data-name="admit" onClick=${() => change({ reason: '' })}>${say('apart.admit')}</button>`
      : html`<div class="stack line">
          <${TextField} name=${`reason-${one.digest}`} lines=${3} label=${say('apart.why')} hint=${say('apart.why.hint')} value=${draft.reason} onChange=${(/** @type {string} */ reason) => change({ reason })} />
          <${MainAction} name="sign-admission" label=${say('apart.sign')} under=${draft.reason.trim() ? say('apart.sign.under', { name: person.name }) : say('apart.wants_reason')} disabled=${!draft.reason.trim()} run=${admit} /></div>`}
  </li>`
}
