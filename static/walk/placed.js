// Panels placed today, from-to, for each area of the walk.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'

/** @param {{record: any, areas: any[], placed: any[], onChange: (placed: any[]) => any}} props */
export function Placed({ record, areas, placed, onChange }) {
  return areas.map((area) => {
    const mine = placed.find((one) => one.area === area.id)
    const most = area.panel_count ?? 999
    const put = (/** @type {any} */ row) => onChange([...placed.filter((one) => one.area !== area.id), ...(row ? [row] : [])])
    const choose = (/** @type {string} */ answer) => {
      const next = nextPanel(record, area.id, most)
      put(answer === 'yes' ? { area: area.id, from: next, to: Math.min(next + 9, most) } : null)
    }
    const set = (/** @type {'from' | 'to'} */ end) => (/** @type {string} */ value) => {
      const row = { ...mine, [end]: Math.round(Number(value)) }
      put(end === 'from' ? { ...row, to: Math.max(row.from, row.to) } : { ...row, from: Math.min(row.from, row.to) })
    }
    return html`<div key=${area.id} class="stack">
      <${Choice} name=${`placed-${area.id}`} label=${say('walk.placed', { area: area.name })} value=${mine ? 'yes' : 'no'} onChange=${choose}
        options=${['no', 'yes'].map((one) => ({ value: one, label: say(`walk.placed.${one}`) }))} />
      ${mine && html`<${Stepper} name=${`from-${area.id}`} label=${say('walk.placed.from')} value=${String(mine.from)} steps=${[1, 10]} low=${1} high=${most} onChange=${set('from')} />
        <${Stepper} name=${`to-${area.id}`} label=${say('walk.placed.to')} value=${String(mine.to)} steps=${[1, 10]} low=${1} high=${most} onChange=${set('to')} />`}
    </div>`
  })
}

/** @param {any} record @param {string} area @param {number} most */
function nextPanel(record, area, most) {
  const ends = Object.values(record.walks).flatMap((/** @type {any} */ walk) => walk.placed ?? []).filter((/** @type {any} */ one) => one.area === area).map((/** @type {any} */ one) => one.to)
  return Math.min(Math.max(0, ...ends) + 1, most)
}
