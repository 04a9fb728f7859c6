// Sign in, once, with signal: the phone makes its key and the server ties it to the person.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Trouble } from '../words/trouble.js'
import { isPin } from '../people/pin.js'
import { signIn, setPin } from '../people/session.js'
import { hasPasskeys, signInWithPasskey } from '../people/passkeys.js'
import { enrol } from '../people/device.js'
import { sendNow } from '../sync/engine.js'
import { go } from '../frame/route.js'
import { Screen } from '../frame/screen.js'
import { TextField } from '../frame/text_field.js'
import { MainAction } from '../frame/main_action.js'
import { Language } from './language.js'
import { PinField } from './pin_field.js'

export function SignIn() {
  const [login, setLogin] = useState('')
  const [password, setPassword] = useState('')
  const [pin, setPinText] = useState('')
  const run = (/** @type {() => Promise<any>} */ open) => async () => {
    if (pin && !isPin(pin)) throw new Trouble('people.pin_form', { field: 'pin', value: '•'.repeat(pin.length) })
    await open()
    if (pin) await setPin(pin) // it was them: this PIN takes the place of one forgotten
    await enrol()
    sendNow()
    go()
  }
  return html`<${Screen} title=${say('sign_in')} over="Seamwalk">
    <p class="big">${say('sign_in.why')}</p>
    <${TextField} name="login" label=${say('sign_in.login')} value=${login} onChange=${setLogin} autocomplete="username" />
    <${TextField} name="password" type="password" label=${say('sign_in.password')} value=${password} onChange=${setPassword}
      autocomplete="current-password" />
    <${PinField} name="pin" label=${say('sign_in.pin')} hint=${`${say('pin.form')} ${say('pin.replaces')}`} value=${pin} onChange=${setPinText} />
    <${MainAction} name="sign-in" label=${say('sign_in')} run=${run(() => signIn(login.trim(), password))} disabled=${!login.trim() || !password} />
    ${hasPasskeys() && html`<${MainAction} plain name="passkey" label=${say('passkey.sign_in')} under=${say('passkey.sign_in.under')} run=${run(signInWithPasskey)} />`}
    <${Language} />
    <p class="small">${say('not_the_engineer')}</p>
  <//>`
}
