// The last panel of the day: from here on its open leg is held, and its places are drawn.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Stepper } from '../frame/stepper.js'
import { MainAction } from '../frame/main_action.js'
import { enterMark } from './enter_mark.js'
import { goneOver, nextPanel } from './standing.js'

/** @param {{job: string, record: any, lot: any}} props */
export function LastPanel({ job, record, lot }) {
  const least = Math.max(nextPanel(lot) - 1, lot.population[0].from)
  const [to, setTo] = useState(/** @type {number | null} */ (least))
  const against = to === null ? [] : goneOver(lot, to)
  return html`<p class="big">${say('night.last.what')}</p>
    <${Stepper} name="last-panel" label=${say('night.last')} value=${to === null ? null : String(to)} steps=${[1, 5]} low=${least} high=${record.areas[lot.population[0].area]?.panel_count ?? 999}
      onChange=${(/** @type {string} */ value) => setTo(Math.round(Number(value)))} onWrong=${() => setTo(null)} />
    ${against.length > 0 && html`<p class="problem"><strong>▲ ${say('mark.held', { panels: against.join(', ') })}</strong></p>`}
    <${MainAction} name="night-mark" label=${say('night.hold', { to: to ?? '—' })} under=${say('night.hold.under')} disabled=${to === null || against.length > 0} run=${() => enterMark({ job, lot, to: /** @type {number} */ (to), night: true })} />`
}
