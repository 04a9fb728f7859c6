// The drawn places of a panel that were not looked at in full, one by one, each with what became of it.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { tape } from '../frame/tape.js'
import { zoneName } from '../roof/names.js'

/** @param {{places: any[]}} props */
export function UnseenPlaces({ places }) {
  const unseen = places.filter((place) => place.state !== 'looked')
  if (unseen.length === 0) return null
  return html`<ul class="unseen-places">${unseen.map((place) => html`<li key=${place.index} data-name="unseen-place" data-state=${place.state}>
    ${say('place.from_low_end', { distance: tape(place.from_low_end) })}${place.zone ? ` · ${zoneName(place.zone)}` : ''}: ${say(`drawn.place.${place.state}`)}</li>`)}</ul>`
}
