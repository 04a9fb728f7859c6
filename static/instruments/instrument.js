// Which instrument an item is measured with.

import { html } from '../frame/view.js'
import { SlotTaps } from './slot_taps.js'
import { NumberReading } from './number_reading.js'
import { Tab } from './tab.js'
import { Feeler } from './feeler.js'
import { Micrometer } from './micrometer.js'
import { Inclinometer } from './inclinometer.js'
import { Gaps } from './gaps.js'
import { Count } from './count.js'

const INSTRUMENTS = /** @type {Record<string, any>} */ ({
  slot_taps: SlotTaps, number: NumberReading, tab: Tab, feeler: Feeler, micrometer: Micrometer, inclinometer: Inclinometer, gaps: Gaps, count: Count,
})

/**
 * @param {{item: any, record: any, area: any, picture: string, job: string, value: any, onChange: (reading: any) => any,
 *   verdict: any, bare: any, beforehand: any, retake: any}} props `picture`: the close-up on which taps are made, '' while there is none
 */
export function Instrument(props) {
  const One = INSTRUMENTS[props.item.instrument]
  return One ? html`<${One} ...${props} />` : null
}
