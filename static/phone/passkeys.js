// One's own passkeys: add one on this phone, see which there are, remove what is no longer used.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { addPasskey, hasPasskeys, ownPasskeys, removePasskey } from '../people/passkeys.js'
import { age, clock } from '../frame/age.js'
import { path } from '../frame/route.js'
import { MainAction } from '../frame/main_action.js'
import { Problem } from '../frame/problem.js'
import { Twice } from '../frame/twice.js'

/** @param {{person: any}} props */
export function Passkeys({ person }) {
  const [known, setKnown] = useState(/** @type {any} */ ('asking'))
  const [fault, setFault] = useState(/** @type {any} */ (null))
  const read = () => ownPasskeys().then((found) => setKnown(found ?? 'sign_in_first'), () => setKnown('no_signal'))
  useEffect(() => {
    if (hasPasskeys()) read()
  }, [person.id])
  if (!hasPasskeys()) return html`<p data-name="passkeys" data-state="absent">${say('passkey.absent')}</p>`
  const remove = (/** @type {string} */ id) => () => removePasskey(id).then(() => setFault(null), setFault).then(read)
  return html`<p>${say('passkey.what')}</p>
    <div class="stack" role="status" data-name="passkeys" data-state=${Array.isArray(known) ? 'known' : known}>
      ${known === 'no_signal' && html`<p>▲ ${say('passkey.no_signal')}</p>`}
      ${known === 'sign_in_first' && html`<p>▲ ${say('passkey.sign_in_first')}</p>`}
      ${known.length === 0 && html`<p>${say('passkey.none')}</p>`}
      <${Problem} fault=${fault} />
    </div>
    ${known === 'sign_in_first' && html`<a class="press" href=${path('sign-in')} data-name="sign-in-again">${say('sign_in')}</a>`}
    ${Array.isArray(known) && html`
      <ul class="rows">${known.map((/** @type {any} */ one) => html`<li key=${one.id} class="row" data-name="passkey">
        <strong>${one.name}</strong>
        <span>${say('passkey.since', { at: clock(one.added_at) })} · ${one.used_at ? say('passkey.used', { age: age(one.used_at) }) : say('passkey.unused')}</span>
        <${Twice} name="remove-passkey" label=${say('passkey.remove')} ask=${say('passkey.remove.ask', { name: one.name })} run=${remove(one.id)} />
      </li>`)}</ul>
      <${MainAction} plain name="add-passkey" label=${say('passkey.add')} done=${say('passkey.added')} run=${() => addPasskey().then(read)} />`}`
}
