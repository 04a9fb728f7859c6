// One area's sheet, a page when printed: the lead, the metal now, the slots along the panel, and what stands above it all.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { unitOf } from '../frame/amount.js'
import { Stepper } from '../frame/stepper.js'
import { Lead } from './lead.js'
import { Heat } from './heat.js'
import { Panel } from './panel.js'
import { Notes } from './notes.js'
import { because } from './because.js'
import { useCard } from './use_card.js'

/** @param {{job: any, area: any, assembly: any, today: string, seen: boolean}} props `seen`: on the screen; paper has every sheet */
export function Sheet({ job, area, assembly, today, seen }) {
  const [metal, setMetal] = useState(/** @type {string | null} */ (null))
  const heat = unitOf(job, 'heat')
  const card = useCard(job, assembly, area, metal === null ? null : { value: metal, unit: heat })
  if (!card) return html`<section class=${seen ? 'part card' : 'part card elsewhere'}><h2>${area.name}</h2></section>`
  const now = card.columns.findIndex((/** @type {any} */ column) => column.name === 'now')
  const mild = card.columns[1]?.metal
  return html`<section class=${'part card' + (card.pieces.length > 1 ? ' both-ways' : '') + (seen ? '' : ' elsewhere')} data-name="sheet" data-area=${area.id}>
    <p class="card-head">${[say('card'), today, job.name, ...(job.invented ? [say('invented')] : [])].join(' · ')}</p>
    <div class="card-name"><h2>${area.name}</h2>
      <p class="card-assembly">${[assembly.name, assembly.approval?.reference].filter(Boolean).join(' · ')}</p></div>
    ${card.reason ? html`<div class="problem"><strong>▲ ${say('card.none')}</strong><p class="big">${because(card.reason)}</p></div>` : html`
      <${Lead} card=${card} />
      ${card.together && html`<${Heat} card=${card} job=${job} />`}
      <div class="card-now">
        <${Stepper} name=${'metal-' + area.id} label=${say('card.metal')} hint=${metal === null ? say('card.metal.hint') : ''} value=${metal} unit=${{ F: '°F', C: '°C' }[heat]}
          from=${String(Math.round(mild?.unit === heat ? mild.value : 20))} steps=${heat === 'C' ? [1, 5] : [1, 10]} low=${-60} high=${250} onChange=${setMetal} onWrong=${() => setMetal(null)} />
        ${now >= 0 && card.columns[now].touch && html`<p class="card-touch"><strong>▲ ${say(`card.touch.${card.columns[now].touch}`)}</strong></p>`}
        ${now >= 0 && html`<div aria-live="polite"><h3>${say(`card.now.${card.kind}`)}</h3><${Panel} ...${{ card, assembly }} columns=${[now]} /></div>`}
      </div>
      <div class="card-day"><h3>${say(`card.day.${card.kind}`)}</h3><${Panel} ...${{ card, assembly }} columns=${[0, 1, 2]} /></div>`}
    <${Notes} card=${card} assembly=${assembly} />
  </section>`
}
