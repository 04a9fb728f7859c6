// This phone: what waits on it, whether it is ready for no signal, who holds it.

import { html, useState } from '../frame/view.js'
import { known, say } from '../words/say.js'
import { lock, setPin, signOut } from '../people/session.js'
import { sendNow } from '../sync/engine.js'
import { go, path } from '../frame/route.js'
import { Part, Screen } from '../frame/screen.js'
import { MainAction } from '../frame/main_action.js'
import { Twice } from '../frame/twice.js'
import { useStanding, waitingWords, oldestWords } from '../frame/strip.js'
import { Install } from './install.js'
import { Language } from './language.js'
import { MissingNotice } from './missing_notice.js'
import { Passkeys } from './passkeys.js'
import { PinField } from './pin_field.js'
import { useSyncStatus } from './sync_status.js'
import { Update } from './update.js'

/** @param {{person: any}} props */
export function Phone({ person }) {
  const standing = useStanding()
  const sync = useSyncStatus()
  const [pin, setPinText] = useState('')
  const changePin = async () => {
    await setPin(pin)
    setPinText('')
  }
  return html`<${Screen} title=${say('phone')} back=${path()} backTo=${say('jobs')}>
    <p class="figure-line">${waitingWords(standing)}${oldestWords(standing)}</p>
    ${standing?.refused > 0 && html`<p class="problem"><strong>▲ ${say('phone.refused', { n: standing.refused })}</strong></p>`}
    ${standing?.others > 0 && html`<p>${say('phone.others', { n: standing.others })}</p>`}
    <${MainAction} name="send-now" label=${say('phone.send')} under=${sync} run=${sendNow} />
    <a class="press" href=${path('unsent')} data-name="unsent">${say('unsent')}</a>
    <${MissingNotice} always person=${person} />
    <${Part} name=${say('phone.no_signal')}>
      <p class="big">${standing?.ready.ready ? '✓ ' + say('phone.ready') : '▲ ' + say('phone.not_ready')}</p>
      ${standing && !standing.ready.ready && html`<p>${known(standing.ready.reason) ? say(standing.ready.reason, standing.ready.facts) : standing.ready.reason}</p>`}
      ${standing?.ready.pictures > 0 && html`<p data-name="pictures-missing">▲ ${say('phone.pictures', { n: standing.ready.pictures })}</p>`}
    <//>
    <${Part} name=${say('phone.person')}>
      <p class="big">${person.name}, ${say(`role.${person.role}`)}</p>
      <button type="button" class="press" data-name="lock" onClick=${() => lock().then(() => go())}>${say('phone.lock')}</button>
      <a class="press" href=${path('who')}>${say('phone.switch')}</a>
      <${PinField} name="new-pin" label=${say('phone.new_pin')} hint=${say('pin.form')} value=${pin} onChange=${setPinText} />
      <${MainAction} plain name="set-pin" label=${say('phone.set_pin')} run=${changePin} done=${say('saved')} disabled=${pin.length < 4} />
      <${Twice} name="sign-out" label=${say('phone.sign_out')} ask=${say('phone.sign_out.ask')} run=${() => signOut().then(() => go())} />
    <//>
    <${Part} name=${say('passkey')}><${Passkeys} person=${person} /><//>
    <${Part} name=${say('shell.app')}>
      <${Update} />
      <${Install} />
    <//>
    <${Language} />
  <//>`
}
