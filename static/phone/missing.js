// What this person recorded on another phone and what never arrived, by name, and what can be done about it.

import { html, useEffect } from '../frame/view.js'
import { say } from '../words/say.js'
import { go, path } from '../frame/route.js'
import { age, clock } from '../frame/age.js'
import { Part, Screen } from '../frame/screen.js'
import { MainAction } from '../frame/main_action.js'
import { OutItems } from '../frame/out_items.js'
import { currentRow } from '../people/current.js'
import { askMissing, markSeen } from '../sync/missing.js'
import { useMissing } from './missing_notice.js'

/** @param {{person: any}} props */
export function Missing({ person }) {
  const known = useMissing(person?.id)
  useEffect(() => { currentRow().then((row) => (row?.kid ? askMissing(row) : undefined)).catch(() => {}) }, [person?.id]) // no signal: as told before
  const seen = () => markSeen(person.id).then(() => go())
  return html`<${Screen} title=${say('missing')} back=${path('phone')} backTo=${say('phone')}>
    ${known?.phones.length ? html`
      <p class="big">${say('missing.what')}</p>
      <p>${say('missing.erased')}</p>
      <p>${say('missing.other')}</p>
      ${known.phones.map((/** @type {any} */ one) => html`<${Part} key=${one.kid} name=${one.name}>
        <p>${say('missing.phone', { name: one.name, age: age(one.unsent.told_at), at: clock(one.unsent.told_at) })}</p>
        ${one.revoked_at && html`<p><strong>${say('missing.ended')}</strong></p>`}
        <${OutItems} items=${one.unsent.items} />
      <//>`)}
      <${MainAction} name="seen" label=${say('missing.seen')} run=${seen} />` : html`<p class="big">✓ ${say('missing.none')}</p>`}
  <//>`
}
