// What an area or the whole roof comes to: panels, lengths, seams and places, counted by the rulebook.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { number } from '../words/number.js'
import { shown } from '../frame/amount.js'
import { ask } from '../rules/ask.js'
import { zoneName } from './names.js'

const LISTED = 4 // runs of one length that are told one by one

/** One area. @param {{layout: any, assembly: any, area: any}} props `layout` undefined while it is being counted, null where it cannot be */
export function Tally({ layout, assembly, area }) {
  const [over, setOver] = useState(false)
  useEffect(() => {
    let here = true
    setOver(false)
    if (area.run && assembly?.longest_run) ask({ call: 'judge', rule: 'limit', inputs: { reading: area.run, at_most: assembly.longest_run } }).then((one) => { if (here) setOver(one.verdict === 'fail') }, () => {})
    return () => { here = false }
  }, [area.digest, assembly?.digest])
  if (layout === undefined) return html`<p data-name="counting">${say('plan.counting')}</p>`
  if (!layout?.panels) return null
  const { unit } = layout
  const limit = assembly?.longest_run
  const longest = number(layout.longest, unit)
  const most = Math.max(...layout.lengths.map((/** @type {any} */ one) => one.length)), least = Math.min(...layout.lengths.map((/** @type {any} */ one) => one.length))
  const lengths = layout.lengths.length > LISTED ? say('plan.lengths.many', { n: layout.lengths.length, least: number(least, unit), most: number(most, unit) })
    : layout.lengths.map((/** @type {any} */ one) => say(one.from === one.to ? 'plan.lengths.one' : 'plan.lengths.run', { ...one, length: number(one.length, unit) })).join('; ')
  return html`<${Rows} name="tally" data=${layout} rows=${[
    ['panels', say('plan.panels'), String(layout.panels)],
    ['lengths', say('plan.lengths'), lengths],
    ['longest', say('plan.longest'), limit ? html`<span class=${over ? 'over' : ''}>${say(over ? 'plan.longest.over' : 'plan.longest.within', { length: longest, limit: shown(limit), run: number(area.run?.value, area.run?.unit) })}</span>` : longest],
    ['seams', say('plan.seams'), `${layout.seams} · ${number(layout.seam_length, unit, 1)}`],
    ...zoneRows(layout),
    ['surface', say('plan.surface'), `${number(layout.area, '', 1)} ${unit}²`]]} />`
}

/** The roof. @param {{layouts: Record<string, any>, areas: any[]}} props */
export function Whole({ layouts, areas }) {
  const [total, setTotal] = useState(/** @type {any} */ (null))
  const known = areas.filter((one) => one.id in layouts)
  useEffect(() => {
    let here = true
    if (known.length === areas.length && areas.length) ask({ call: 'roof_totals', layouts: known.map((one) => layouts[one.id]) }).then((found) => { if (here) setTotal(found) }, () => {})
    return () => { here = false }
  }, [known.length, areas.map((one) => one.digest).join()])
  if (!total) return html`<p data-name="counting">${say('plan.counting')} ${known.length}/${areas.length}</p>`
  return html`<${Rows} name="tally-roof" data=${total} rows=${[
    ['panels', say('plan.panels'), String(total.panels)], ['longest', say('plan.longest'), number(total.longest, total.unit)],
    ['seams', say('plan.seams'), `${total.seams} · ${number(total.seam_length, total.unit, 1)}`], ...zoneRows(total),
    ['surface', say('plan.surface'), total.unit ? `${number(total.area, '', 1)} ${total.unit}²` : '']]} />`
}

/** @param {any} counted */
function zoneRows({ stations }) {
  return Object.entries(stations).sort(([a], [b]) => (a < b ? -1 : 1)).map(([zone, n]) => [`zone-${zone}`, zone ? say('plan.places.zone', { zone: zoneName(zone) }) : say('plan.places.untold'), String(n)])
}

/** @param {{name: string, rows: any[], data: any}} props */
function Rows({ name, rows, data }) {
  return html`<dl class="facts tally" data-name=${name} data-panels=${data.panels}>${rows.filter(([, , value]) => value).map(([key, label, value]) => html`<div key=${key} data-row=${key}><dt>${label}</dt><dd>${value}</dd></div>`)}</dl>`
}
