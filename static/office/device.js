// One phone: what it is called, what it still holds, and the two presses that end its key.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { age } from '../frame/age.js'
import { useDraft } from '../frame/draft.js'
import { MainAction } from '../frame/main_action.js'
import { OutItems } from '../frame/out_items.js'
import { TextField } from '../frame/text_field.js'
import { Twice } from '../frame/twice.js'
import { Problem } from '../frame/problem.js'
import { tell } from './asked.js'
import { when } from './when.js'

/** @param {{job: string, one: any, here: boolean, person: any, read: () => Promise<void>}} props `one`: a key as the office tells of it; `here`: it is this phone's */
export function Device({ job, one, here, person, read }) {
  const [fault, setFault] = useState(/** @type {any} */ (null))
  const [draft, change, drop] = useDraft(person.id, `office-device/${job}/${one.kid}`, { name: null })
  if (!draft) return null
  const name = async () => {
    await tell('POST', `/api/devices/${one.kid}`, { name: draft.name.trim() })
    await drop()
    await read()
  }
  const revoke = () => tell('DELETE', `/api/devices/${one.kid}`).then(() => setFault(null), setFault).then(read)
  return html`<li class="row phone" data-name="device" data-here=${String(here)} data-revoked=${String(Boolean(one.revoked_at))}>
    <strong>${one.name}${here ? ` · ${say('devices.this')}` : ''}</strong>
    <span>${one.who}</span>
    <span class="line">${heard(one)}</span>
    <span class="line" data-name="unsent">${unsent(one.unsent)}</span>
    ${one.late && html`<p class="line" data-name="late"><strong>${say('devices.late')}</strong></p>`}
    ${one.replaced && one.unsent?.items?.length > 0 && html`<p class="line" data-name="replaced"><strong>${say('devices.replaced')}</strong></p>`}
    ${one.unsent?.items?.length > 0 && html`<details class="line" data-name="which"><summary>${say('devices.which')}</summary><${OutItems} items=${one.unsent.items} /></details>`}
    <span class="hint line">${say('devices.since', { at: when(one.enrolled_at) })} · ${say('devices.key', { key: one.kid.slice(0, 8) })}</span>
    <${Problem} fault=${fault} />
    ${one.revoked_at ? html`<p class="line"><strong>✕ ${say('devices.revoked', { at: when(one.revoked_at) })}</strong></p>` : html`
      ${draft.name === null
        ? html`<button type="button" class="press" data-name="rename" onClick=${() => change({ name: one.name })}>${say('devices.rename')}</button>`
        : html`<div class="stack line">
            <${TextField} name=${`name-${one.kid}`} label=${say('devices.name')} hint=${say('devices.name.hint')} value=${draft.name} onChange=${(/** @type {string} */ text) => change({ name: text })} />
            <${MainAction} plain name="save-name" label=${say('save')} disabled=${!draft.name.trim()} run=${name} />
            <button type="button" class="press" data-name="keep-name" onClick=${drop}>${say('devices.keep_name')}</button></div>`}
      <${Twice} name="revoke" label=${say('devices.revoke')} ask=${say(here ? 'devices.revoke.ask_here' : 'devices.revoke.ask', { who: one.who, name: one.name })} run=${revoke} />`}
  </li>`
}

/** @param {any} one */
function heard(one) {
  return one.last_contact ? say('devices.heard', { age: age(one.last_contact), at: when(one.last_contact) }) : say('devices.not_heard')
}

/** @param {{entries: number, photos: number, oldest: string | null} | null} unsent */
function unsent(unsent) {
  if (!unsent) return say('devices.unsent.untold')
  if (!unsent.entries && !unsent.photos) return '✓ ' + say('devices.unsent.none')
  return '▲ ' + say('devices.unsent', { entries: unsent.entries, photos: unsent.photos, age: age(unsent.oldest) })
}
