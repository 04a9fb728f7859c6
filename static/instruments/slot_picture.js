// The taps on the picture of a slot, and a card lying beside it that tells how the picture was held.

import { html, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { number } from '../words/number.js'
import { TapPicture } from './tap_picture.js'

const SLOT = ['ridge_end', 'eave_end', 'screw']
const CARD = ['corner_1', 'corner_2', 'corner_3', 'corner_4']

/**
 * @param {{picture: string, job: string, value: any, onChange: (reading: any) => any, verdict: any, bare: any, retake: any}} props
 */
export function SlotPicture({ picture, job, value, onChange, verdict, bare, retake }) {
  const [stage, setStage] = useState('slot')
  const taps = (/** @type {any} */ points) => onChange(points ? { ...value, taps: points } : null)
  const card = (/** @type {any} */ points) => {
    const { card: _, ...rest } = value
    onChange(points ? { ...rest, card: CARD.map((one) => points[one]) } : rest)
  }
  const corners = value?.card && Object.fromEntries(CARD.map((one, n) => [one, value.card[n]]))
  return html`
    ${stage === 'slot'
      ? html`<${TapPicture} key="slot" ...${{ sha256: picture, job, points: SLOT, value: value?.taps, onChange: taps }} />`
      : html`<p class="problem">▲ ${say('slot.card.numbers')}</p>
          <${TapPicture} key="card" ...${{ sha256: picture, job, points: CARD, value: corners, onChange: card }} />`}
    ${value?.taps && html`<${Bounds} ...${{ verdict, bare, card: value.card }} />
      <button type="button" class="press" data-name=${stage === 'slot' ? 'to-card' : 'to-slot'} onClick=${() => setStage(stage === 'slot' ? 'card' : 'slot')}>
        <span class="label">${say(stage === 'slot' ? 'slot.to_card' : 'slot.to_slot')}${stage === 'slot' && html`<span class="under">${say('slot.to_card.under')}</span>`}</span></button>
      ${value.card && html`<button type="button" class="press" data-name="no-card" onClick=${() => { card(null); setStage('slot') }}>${say('slot.no_card')}</button>`}`}
    ${retake}`
}

/** How far off the reading may be, without the card and with it. @param {{verdict: any, bare: any, card: any}} props */
function Bounds({ verdict, bare, card }) {
  const bound = (/** @type {any} */ answer) => answer?.values?.bound && say('slot.either_way', { distance: number(answer.values.bound.value, answer.values.bound.unit) })
  const rows = card ? [['slot.bound.bare', bound(bare)], ['slot.bound.card', bound(verdict)]] : [['slot.bound.bare', bound(verdict)]]
  return html`<dl class="facts" data-name="bounds">${rows.filter(([, text]) => text).map(([name, text]) => html`<div key=${name}><dt>${say(name)}</dt><dd>${text}</dd></div>`)}</dl>`
}
