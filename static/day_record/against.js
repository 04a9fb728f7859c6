// A label held to the approved assembly: what the record answers, in words. A lighter sheet is pointed out.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { number } from '../words/number.js'
import { ask } from '../rules/ask.js'

const FINE = 4 // places of a sheet's thickness in inches

/** @param {{record: any, compared: any[]}} props as the record compares */
export function Against({ record, compared }) {
  return compared.map((one) => html`<div key=${one.assembly} class=${one.gauge.because === 'lighter' ? 'problem' : 'stack'} role=${one.gauge.because === 'lighter' ? 'alert' : undefined} data-name="against" data-gauge=${one.gauge.because || one.gauge.state} data-coating=${one.coating.because || one.coating.state}>
    ${compared.length > 1 && html`<p><strong>${say('day_record.against', { assembly: record.assemblies[one.assembly]?.name ?? '—' })}</strong></p>`}
    <p>${gaugeWords(one.gauge)}</p><p>${sign(one.coating)} ${say(`day_record.coating.${one.coating.because || 'agree'}`, { told: one.coating.told ?? '—', approved: one.coating.approved ?? '—' })}</p></div>`)
}

/** Asked while a label is typed. @param {{record: any, areas: string[], material: any}} props */
export function AgainstNow({ record, areas, material }) {
  const [compared, setCompared] = useState(/** @type {any[]} */ ([]))
  const label = { what: material.what, gauge: material.gauge || undefined, gauge_system: material.gauge_system || undefined, coating: material.coating || undefined }
  useEffect(() => {
    let here = true
    ask({ call: 'material', record: { areas: record.areas, assemblies: record.assemblies }, areas, material: label })
      .then((told) => { if (here) setCompared(/** @type {any} */ (told)) }, () => { if (here) setCompared([]) })
    return () => { here = false }
  }, [JSON.stringify([label, areas])])
  return html`<${Against} ...${{ record, compared }} />`
}

/** @param {any} gauge */
export function gaugeWords(gauge) {
  const least = (/** @type {string} */ name) => number(gauge.values[name]?.value, gauge.values[name]?.unit ?? 'in', FINE)
  const text = say(`day_record.gauge.${gauge.because || 'agree'}`, { told: gauge.told ?? '—', system: gauge.system ?? '—', approved: gauge.approved ?? '—',
    approved_system: gauge.approved_system ?? '—', against: say(`day_record.gauge.against.${gauge.against}`), least: least('minimum'), wanted: least('tested_minimum') })
  return `${sign(gauge)} ${text}`
}

/** @param {any} side */
const sign = (side) => (side.because === 'lighter' ? '▲' : side.state === 'agree' ? '✓' : side.state === 'other' ? '◇' : '…')
