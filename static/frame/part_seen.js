// Said on every screen of a job of which this person sees a part: else "not recorded" and "none" would speak of everybody.

import { html } from './view.js'
import { say } from '../words/say.js'

export function PartSeen() {
  return html`<aside class="part-seen" aria-label=${say('part_seen.name')} data-name="part-seen">${say('part_seen')}</aside>`
}
