// Which instrument an item is measured with.

import { html } from '../frame/view.js'
import { SlotTaps } from './slot_taps.js'
import { NumberReading } from './number_reading.js'
import { Gaps } from './gaps.js'
import { Count } from './count.js'

const INSTRUMENTS = /** @type {Record<string, any>} */ ({ slot_taps: SlotTaps, number: NumberReading, gaps: Gaps, count: Count })

/** @param {{item: any, record: any, area: any, pictures: string[], job: string, value: any, onChange: (reading: any) => any}} props */
export function Instrument(props) {
  const One = INSTRUMENTS[props.item.instrument]
  return One ? html`<${One} ...${props} />` : null
}
