// Whether a screen's one thing may be done by this person now, and the sentence where it may not.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { useAuthority } from './authority.js'
import { steps } from './offers.js'

/**
 * @param {any} finding @param {any} person @param {string} kind of entry
 * @returns {{offered: boolean, why: string, roles: string[]} | null} null while it is asked; `why`: `own`, `role` or `state`
 */
export function useOffer(finding, person, kind) {
  const authority = useAuthority()
  if (!authority) return null
  const offer = steps(finding, person, authority)[kind] ?? { offered: false, why: 'state' }
  return { ...offer, roles: authority[kind] ?? [] }
}

/** @param {{offer: {why: string, roles: string[]}, finding: any}} props */
export function NotOffered({ offer, finding }) {
  const roles = offer.roles.map((one) => say(`role.${one}`)).join(', ')
  return html`<p class="statement" data-name="not-offered" data-why=${offer.why}>${say(`finding.not.${offer.why}`, { roles, state: say(`finding.state.${finding.state}`) })}</p>`
}
