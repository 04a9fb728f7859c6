// Nobody holds the phone: who is it, or the first sign-in.

import { html, useEffect, useState } from '../frame/view.js'
import { phonePeople } from '../people/session.js'
import { SignIn } from './sign_in.js'
import { Who } from './who.js'

export function Door() {
  const [people, setPeople] = useState(/** @type {any} */ (null))
  useEffect(() => { phonePeople().then(setPeople) }, [])
  if (people === null) return null
  return people.length ? html`<${Who} />` : html`<${SignIn} />`
}
