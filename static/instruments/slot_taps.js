// A screw in its slot: one word on the roof, or three taps on the picture, then or in the truck.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { Choice } from '../frame/choice.js'
import { SlotPicture } from './slot_picture.js'
import { decides } from './decides.js'

/** What one word says, as a reading carries it. */
const WORDS = /** @type {Record<string, Record<string, string>>} */ ({
  toward_ridge: { third: 'toward_ridge' }, middle: { third: 'middle' }, toward_eave: { third: 'toward_eave' },
  ridge: { end_hidden: 'ridge' }, eave: { end_hidden: 'eave' },
})

/**
 * @param {{picture: string, job: string, value: any, onChange: (reading: any) => any, verdict: any, bare: any, beforehand: any, retake: any}} props
 *   `verdict`, and `bare` without the card; `beforehand`: what the rulebook says of the window before anything is read; `retake`: the way to the camera
 */
export function SlotTaps({ picture, job, value, onChange, verdict, bare, beforehand, retake }) {
  const said = Object.keys(WORDS).find((one) => WORDS[one].third ? WORDS[one].third === value?.third : WORDS[one].end_hidden === value?.end_hidden)
  const [way, setWay] = useState(said || !picture ? 'word' : 'taps')
  const cannot = decides(beforehand)
  return html`
    ${(cannot === 'no_window' || cannot === 'metal' || (cannot && way === 'word')) && html`<p class="problem" data-name="cannot-decide"><strong>▲ ${say(`slot.cannot.${cannot}`)}</strong></p>`}
    <${Choice} name="slot-way" label=${say('slot.way')} value=${way} onChange=${(/** @type {string} */ one) => { if (one !== way) { setWay(one); onChange(null) } }}
      options=${['word', 'taps'].map((one) => ({ value: one, label: say(`slot.way.${one}`), under: say(`slot.way.${one}.under`) }))} />
    ${way === 'word' && html`<${Choice} name="slot-word" label=${say('slot.word')} value=${said} onChange=${(/** @type {string} */ one) => onChange(WORDS[one])}
        options=${Object.keys(WORDS).map((one) => ({ value: one, label: say(`slot.word.${one}`) }))} />
      ${said && picture && html`<p class="hint">${say('slot.taps_later')}</p>`}`}
    ${way === 'taps' && (picture
      ? html`<${SlotPicture} key=${picture} ...${{ picture, job, value, onChange, verdict, bare, retake }} />`
      : html`<p class="problem">▲ ${say('slot.picture_first')}</p>`)}`
}
