// Sign in, once, with signal: the phone makes its key and the server ties it to the person.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { signIn, setPin } from '../people/session.js'
import { enrol } from '../people/device.js'
import { sendNow } from '../sync/engine.js'
import { go } from '../frame/route.js'
import { Screen } from '../frame/screen.js'
import { TextField } from '../frame/text_field.js'
import { MainAction } from '../frame/main_action.js'
import { Language } from './language.js'

export function SignIn() {
  const [login, setLogin] = useState('')
  const [password, setPassword] = useState('')
  const [pin, setPinText] = useState('')
  const run = async () => {
    const person = await signIn(login.trim(), password)
    await enrol()
    if (pin && !person.pin) await setPin(pin)
    sendNow()
    go()
  }
  return html`<${Screen} title=${say('sign_in')} over="Seamwalk">
    <p class="big">${say('sign_in.why')}</p>
    <${TextField} name="login" label=${say('sign_in.login')} value=${login} onChange=${setLogin} autocomplete="username" />
    <${TextField} name="password" type="password" label=${say('sign_in.password')} value=${password} onChange=${setPassword}
      autocomplete="current-password" />
    <${TextField} name="pin" type="password" inputmode="numeric" label=${say('sign_in.pin')} hint=${say('sign_in.pin.hint')}
      value=${pin} onChange=${setPinText} />
    <${MainAction} name="sign-in" label=${say('sign_in')} run=${run} disabled=${!login.trim() || !password} />
    <${Language} />
    <p class="small">${say('not_the_engineer')}</p>
  <//>`
}
