// Where an invitation leads: it says to what job, firm and role, and lets one person join, with an account or a new one.

import { html, useEffect, useRef, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Trouble } from '../words/trouble.js'
import { call } from '../server/request.js'
import { currentRow } from '../people/current.js'
import { enrol } from '../people/device.js'
import { isPin } from '../people/pin.js'
import { begun, csrfToken, refusal, setPin, signIn } from '../people/session.js'
import { callAs } from '../people/token.js'
import { sendNow } from '../sync/engine.js'
import { go } from '../frame/route.js'
import { Choice } from '../frame/choice.js'
import { Facts } from '../frame/facts.js'
import { MainAction } from '../frame/main_action.js'
import { Problem } from '../frame/problem.js'
import { Screen } from '../frame/screen.js'
import { TextField } from '../frame/text_field.js'
import { Language } from '../phone/language.js'
import { PinField } from '../phone/pin_field.js'
import { when } from './when.js'

/** @param {{person: any, rest: string[]}} props `rest`: the secret of the link */
export function Join({ person, rest }) {
  const address = `/api/invitations/${encodeURIComponent(rest[0] ?? '')}`
  const [known, setKnown] = useState(/** @type {any} */ (null))
  const [fault, setFault] = useState(/** @type {any} */ (null))
  const [chosen, setAs] = useState('')
  const joined = useRef(/** @type {string | null} */ (null))
  const [typed, setTyped] = useState({ login: '', name: '', password: '', pin: '' })
  const put = (/** @type {string} */ field) => (/** @type {string} */ text) => setTyped((/** @type {any} */ old) => ({ ...old, [field]: text }))
  const look = async () => {
    try {
      const reply = await call('GET', address)
      if (reply.status >= 300) throw refusal('join.refused', 'invitation', '', reply)
      setKnown(reply.data)
      setFault(null)
    } catch (problem) {
      setFault(problem)
    }
  }
  useEffect(() => { look() }, [address])
  const as = chosen || (person && person.role === known?.role ? 'me' : 'new') // another role cannot join by it
  const join = async () => {
    const { pin } = typed
    if (pin && as !== 'me' && !isPin(pin)) throw new Trouble('people.pin_form', { field: 'pin', value: '•'.repeat(pin.length) })
    if (!joined.current) {
      if (as === 'have') {
        await signIn(typed.login.trim(), typed.password)
        await enrol()
      }
      joined.current = (as === 'new' ? await joinNew(address, typed) : await joinKnown(address)).job
    }
    // From here the invitation is used: a second press goes on where the signal was lost.
    if (pin && as !== 'me') await setPin(pin)
    await enrol()
    await sendNow() // the job comes with the next round
    go('job', String(joined.current))
  }
  const wants = as === 'me' ? '' : !typed.login.trim() ? 'join.wants_login' : as === 'new' && !typed.name.trim() ? 'join.wants_name' : !typed.password ? 'join.wants_password' : ''
  const ways = [...(person ? [{ value: 'me', label: say('join.me', { name: person.name }) }] : []),
    { value: 'new', label: say('join.new'), under: say('join.new.under') }, { value: 'have', label: say('join.have'), under: say('join.have.under') }]
  return html`<${Screen} title=${say('join')} over="Seamwalk">
    ${fault && html`<${Problem} fault=${fault} /><button type="button" class="press" data-name="look-again" onClick=${look}>${say('office.ask_again')}</button>`}
    ${!known && !fault && html`<p role="status">${say('office.asking')}</p>`}
    ${known && html`
      <p class="big" data-name="invited">${say('join.to', { job: known.job_name })}</p>
      <${Facts} rows=${[[say('join.firm'), known.firm], [say('join.role'), say(`role.${known.role}`)], [say('join.until'), when(known.expires)]]} />
      <p>${say(`role.${known.role}.does`)}</p>
      <${Choice} name="join-as" label=${say('join.as')} value=${as} onChange=${setAs} options=${ways} />
      ${as !== 'me' && html`<${TextField} name="join-login" label=${say('sign_in.login')} hint=${as === 'new' ? say('join.login.hint') : undefined} value=${typed.login} onChange=${put('login')} autocomplete="username" />`}
      ${as === 'new' && html`<${TextField} name="join-name" label=${say('join.name')} hint=${say('join.name.hint')} value=${typed.name} onChange=${put('name')} autocomplete="name" />`}
      ${as !== 'me' && html`<${TextField} name="join-password" type="password" label=${say('sign_in.password')} hint=${as === 'new' ? say('join.password.hint') : undefined} value=${typed.password} onChange=${put('password')}
          autocomplete=${as === 'new' ? 'new-password' : 'current-password'} />
        <${PinField} name="join-pin" label=${say('sign_in.pin')} hint=${`${say('pin.form')} ${say('pin.replaces')}`} value=${typed.pin} onChange=${put('pin')} />`}
      <${MainAction} name="join" label=${say('join.now')} under=${wants ? say(wants) : say('join.once')} disabled=${Boolean(wants)} run=${join} />`}
    <${Language} />
    <p class="small">${say('not_the_engineer')}</p>
  <//>`
}

/** @param {string} address @param {{login: string, name: string, password: string}} typed */
async function joinNew(address, { login, name, password }) {
  const reply = await call('POST', address, { cookies: true, json: { login: login.trim(), name: name.trim(), password }, headers: { 'X-Seamwalk-Csrf': await csrfToken(true) } })
  if (reply.status >= 300 || !reply.data?.person) throw refusal('join.refused', 'invitation', '', reply)
  await begun(reply.data)
  return reply.data
}

/** @param {string} address */
async function joinKnown(address) {
  const reply = await callAs(await currentRow(), 'POST', address, { json: {} })
  if (reply.status >= 300) throw refusal('join.refused', 'invitation', '', reply)
  return reply.data
}
