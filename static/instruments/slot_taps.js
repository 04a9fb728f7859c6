// A screw in its slot: one word on the roof, an end hidden under the head, or three taps on the picture.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Choice } from '../frame/choice.js'
import { TapPicture } from './tap_picture.js'

const WAYS = ['taps', 'end_hidden', 'third']
const CHOICES = /** @type {Record<string, string[]>} */ ({ end_hidden: ['ridge', 'eave'], third: ['toward_ridge', 'middle', 'toward_eave'] })

/** @param {{pictures: string[], job: string, value: any, onChange: (reading: any) => any}} props */
export function SlotTaps({ pictures, job, value, onChange }) {
  const [way, setWay] = useState(WAYS.find((one) => value?.[one]) ?? 'taps')
  const picture = pictures.at(-1)
  return html`
    <${Choice} name="slot-way" label=${say('slot.way')} value=${way} onChange=${(/** @type {string} */ one) => { setWay(one); onChange(null) }}
      options=${WAYS.map((one) => ({ value: one, label: say(`slot.${one}`) }))} />
    ${way === 'taps' && (picture
      ? html`<${TapPicture} ...${{ sha256: picture, job, value: value?.taps, onChange: (/** @type {any} */ taps) => onChange(taps ? { taps } : null) }} />`
      : html`<p class="problem">▲ ${say('slot.picture_first')}</p>`)}
    ${way !== 'taps' && html`<${Choice} name=${way} label=${say(`slot.${way}`)} value=${value?.[way]} onChange=${(/** @type {string} */ one) => onChange({ [way]: one })}
      options=${CHOICES[way].map((one) => ({ value: one, label: say(`slot.${way}.${one}`) }))} />`}`
}
