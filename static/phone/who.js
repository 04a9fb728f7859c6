// Who is on this phone: pick the name, give the PIN. No signal needed.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { phonePeople, unlock } from '../people/session.js'
import { go, path } from '../frame/route.js'
import { Screen } from '../frame/screen.js'
import { Choice } from '../frame/choice.js'
import { MainAction } from '../frame/main_action.js'
import { Language } from './language.js'
import { PinPad } from './pin_pad.js'

export function Who() {
  const [people, setPeople] = useState(/** @type {any[]} */ ([]))
  const [chosen, setChosen] = useState('')
  const [pin, setPin] = useState('')
  useEffect(() => {
    phonePeople().then((found) => {
      setPeople(found)
      if (found.length === 1) setChosen(found[0].id)
    })
  }, [])
  const person = people.find((one) => one.id === chosen)
  const run = async () => {
    try {
      await unlock(chosen, pin)
    } finally {
      setPin('')
    }
    go()
  }
  return html`<${Screen} title=${say('who')}>
    <${Choice} name="who" label=${say('who.names')} value=${chosen} onChange=${setChosen}
      options=${people.map((one) => ({ value: one.id, label: one.name, under: say(`role.${one.role}`) }))} />
    ${person?.pin && html`<${PinPad} pin=${pin} onChange=${setPin} />`}
    <${MainAction} name="unlock" label=${say('who.open')} run=${run} disabled=${!person || (person.pin && pin.length < 4)} />
    <a class="press" href=${path('sign-in')}>${say('who.another')}</a>
    <p class="small">${say('who.pin_is')}</p>
    <${Language} />
  <//>`
}
