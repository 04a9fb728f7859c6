// The morning's card: one sheet an area, one after another on paper and one at a time on the phone, in the crew's language.

import { html, useState } from '../frame/view.js'
import { LANGUAGES, language, say } from '../words/say.js'
import { path } from '../frame/route.js'
import { Screen } from '../frame/screen.js'
import { Choice } from '../frame/choice.js'
import { MainAction } from '../frame/main_action.js'
import { Language } from '../phone/language.js'
import { sorted } from '../roof/order.js'
import { Sheet } from './sheet.js'
import { printIn } from './print.js'

/** @param {{job: string, record: any, rest: string[]}} props `rest`: the area to begin with */
export function Card({ job, record, rest }) {
  const areas = sorted(record.areas, 'name')
  const [chosen, choose] = useState(record.areas[rest[0]] ? rest[0] : areas[0]?.id)
  const other = LANGUAGES.filter((code) => code !== language())
  return html`<${Screen} title=${say('card')} over=${today()} back=${path('job', job)} backTo=${record.job.name} wide>
    <div class="card-choices"><${Language} />
      ${areas.length > 1 && html`<${Choice} name="card-area" label=${say('card.area')} value=${chosen} onChange=${choose} options=${areas.map((area) => ({ value: area.id, label: area.name }))} />`}</div>
    ${areas.length === 0 && html`<p class="big">${say('job.no_area')}</p>`}
    ${areas.map((area) => html`<${Sheet} key=${area.id} seen=${area.id === chosen} job=${record.job} area=${area} assembly=${record.assemblies[area.assembly] ?? {}} today=${today()} />`)}
    ${areas.length > 0 && html`<div class="stack card-print">
      <p class="hint">${say('card.print.hint')}</p>
      <${MainAction} label=${say('card.print')} under=${say(`card.print.in.${language()}`)} run=${() => printIn(language())} name="print" />
      ${other.map((code) => html`<div key=${code} lang=${code}><${MainAction} label=${say(`card.print.other.${code}`)} plain run=${() => printIn(code)} name=${'print-' + code} /></div>`)}
    </div>`}
  <//>`
}

/** The day as the crew says it: a card is for one morning. */
function today() {
  return new Intl.DateTimeFormat(language(), { dateStyle: 'full' }).format(new Date())
}
