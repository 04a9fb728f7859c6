// The same view once more: the first picture lies faintly over the live camera, so that what changed is seen at a glance.
// Nobody is asked to step anywhere: a view that does not match is taken all the same.

import { html, useEffect, useState } from '../frame/view.js'
import { say } from '../words/say.js'
import { MainAction } from '../frame/main_action.js'
import { photoUrl } from '../photo/read.js'
import { Picture } from '../walk/pair.js'
import { PhotoButton } from '../walk/photo_button.js'
import { canShow, useCamera } from './camera.js'
import { STEPS, fainter, stronger } from './veil.js'

/**
 * @param {{job: string, first: string | null, waiting: boolean, wait: (on: boolean) => Promise<any>, keep: (file: File) => Promise<any>}} props
 *   `first`: the picture to match, or null; `waiting`, `wait`: as of a photo button
 */
export function SameView({ job, first, waiting, wait, keep }) {
  const [on, setOn] = useState(false)
  const [fault, setFault] = useState('')
  const took = async (/** @type {File} */ file) => {
    await keep(file)
    setOn(false)
  }
  return html`<div class="stack" data-name="same-view">
    <ul class="rules"><li>${say('same_view.stay')}</li><li>${say('gate.step_back')}</li></ul>
    ${on
      ? html`<${Live} ...${{ job, first, took }} close=${(/** @type {string} */ why) => { setOn(false); setFault(why) }} />`
      : html`${first && html`<figure><${Picture} ...${{ job, sha256: first }} name=${say('same_view.first')} /><figcaption class="hint">${say('same_view.first')}</figcaption></figure>`}
        ${fault && html`<p class="problem" role="alert"><strong>▲ ${say(fault)}</strong></p>`}
        ${canShow() && !fault && html`<button type="button" class="press tall" data-name="open-camera" onClick=${() => setOn(true)}><span class="label">${say(first ? 'same_view.open' : 'same_view.open.bare')}
          ${first && html`<span class="under">${say('same_view.open.under')}</span>`}</span></button>`}
        <${PhotoButton} role="after" waiting=${waiting} wait=${wait} keep=${(/** @type {File} */ file) => keep(file)} />`}
  </div>`
}

/** @param {{job: string, first: string | null, took: (file: File) => Promise<any>, close: (why: string) => any}} props */
function Live({ job, first, took, close }) {
  const { video, state, shoot } = useCamera(true)
  const [veil, setVeil] = useState(STEPS[1])
  const [over, setOver] = useState('')
  const [shape, setShape] = useState('') // the first picture's own, so that both fill the frame alike
  useEffect(() => { if (first) photoUrl(first, job).then(setOver, () => {}) }, [first])
  useEffect(() => { if (state === 'refused') close('same_view.refused') }, [state])
  useEffect(() => {
    const away = () => { if (document.hidden) close('') } // a camera left behind shows a still picture when one comes back
    document.addEventListener('visibilitychange', away)
    return () => document.removeEventListener('visibilitychange', away)
  }, [])
  return html`<div class="view-frame" data-name="live" data-state=${state} style=${shape ? { aspectRatio: shape } : {}}>
      <video ref=${video} playsinline muted autoplay aria-label=${say('same_view.live')}></video>
      ${over && html`<img class="veil" src=${over} onLoad=${(/** @type {any} */ event) => setShape(`${event.target.naturalWidth} / ${event.target.naturalHeight}`)} alt=${say('same_view.first')} style=${{ opacity: veil / 100 }} />`}
    </div>
    ${over && html`<div class="stack"><label for="in-veil">${say('same_view.veil', { share: veil })}</label>
      <input id="in-veil" type="range" min=${STEPS[0]} max=${STEPS.at(-1)} step="5" value=${veil} onInput=${(/** @type {any} */ event) => setVeil(Number(event.target.value))} />
      <div class="ways"><button type="button" class="press" data-name="fainter" onClick=${() => setVeil(fainter(veil))}>− ${say('same_view.fainter')}</button>
        <button type="button" class="press" data-name="stronger" onClick=${() => setVeil(stronger(veil))}>+ ${say('same_view.stronger')}</button></div></div>`}
    <${MainAction} name="shoot" label=${say('same_view.take')} disabled=${state !== 'live'} run=${async () => took(await shoot())} />
    <button type="button" class="press" data-name="close-camera" onClick=${() => close('')}>${say('same_view.close')}</button>`
}
