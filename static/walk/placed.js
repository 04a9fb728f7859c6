// Panels placed today, from-to, for each area of the walk.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'

/** @param {{record: any, areas: any[], placed: any[], onChange: (placed: any[]) => any}} props */
export function Placed({ record, areas, placed, onChange }) {
  return areas.map((area) => html`<${Rows} key=${area.id} ...${{ record, area, row: placed.find((one) => one.area === area.id) }}
    put=${(/** @type {any} */ row) => onChange([...placed.filter((one) => one.area !== area.id), ...(row ? [row] : [])])} />`)
}

/**
 * One area's panels. While an end is mistyped, or the first comes after the last, the area has no row: its last right digits are nobody's number.
 * @param {{record: any, area: any, row: any, put: (row: any) => any}} props
 */
function Rows({ record, area, row, put }) {
  const [ends, setEnds] = useState(/** @type {{from: number | null, to: number | null} | null} */ (row ? { from: row.from, to: row.to } : null))
  const most = area.panel_count ?? 999
  const tell = (/** @type {any} */ next) => {
    setEnds(next)
    put(next && next.from !== null && next.to !== null && next.from <= next.to ? { area: area.id, ...next } : null)
  }
  const choose = (/** @type {string} */ answer) => {
    if ((answer === 'yes') === Boolean(ends)) return
    const next = nextPanel(record, area.id, most)
    tell(answer === 'yes' ? { from: next, to: Math.min(next + 9, most) } : null)
  }
  const set = (/** @type {'from' | 'to'} */ end) => (/** @type {string} */ value) => {
    tell({ .../** @type {any} */ (ends), [end]: Math.round(Number(value)) })
  }
  const wrong = (/** @type {'from' | 'to'} */ end) => () => tell({ ...ends, [end]: null })
  const text = (/** @type {number | null} */ number) => (number === null ? null : String(number))
  return html`<div class="stack">
    <${Choice} name=${`placed-${area.id}`} label=${say('walk.placed', { area: area.name })} value=${ends ? 'yes' : 'no'} onChange=${choose}
      options=${['no', 'yes'].map((one) => ({ value: one, label: say(`walk.placed.${one}`) }))} />
    ${ends && html`<${Stepper} name=${`from-${area.id}`} label=${say('walk.placed.from')} value=${text(ends.from)} steps=${[1, 10]} low=${1} high=${most} onChange=${set('from')} onWrong=${wrong('from')} />
      <${Stepper} name=${`to-${area.id}`} label=${say('walk.placed.to')} value=${text(ends.to)} steps=${[1, 10]} low=${1} high=${most} onChange=${set('to')} onWrong=${wrong('to')} />
      ${ends.from !== null && ends.to !== null && ends.from > ends.to && html`<p class="problem" role="alert"><strong>▲ ${say('walk.placed.order')}</strong></p>`}`}
  </div>`
}

/** @param {any} record @param {string} area @param {number} most */
function nextPanel(record, area, most) {
  const ends = Object.values(record.walks).flatMap((/** @type {any} */ walk) => walk.placed ?? []).filter((/** @type {any} */ one) => one.area === area).map((/** @type {any} */ one) => one.to)
  return Math.min(Math.max(0, ...ends) + 1, most)
}
