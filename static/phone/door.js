// Nobody holds the phone: who is it, or the first sign-in.

import { html, useEffect, useState } from '../frame/view.js'
import { path } from '../frame/route.js'
import { phonePeople } from '../people/session.js'
import { Who } from './who.js'

/** @param {{at: string}} props the address: where it changes while the door is shut, the way to the sign-in is shown anew */
export function Door({ at }) {
  const [people, setPeople] = useState(/** @type {any[]} */ ([]))
  useEffect(() => {
    phonePeople().then((found) => {
      setPeople(found)
      // At an address of its own it stays until the key is enrolled: what goes wrong on the way is said there.
      if (!found.length) location.replace(path('sign-in'))
    })
  }, [at])
  return people.length ? html`<${Who} />` : null
}
