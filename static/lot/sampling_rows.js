// One choice of a job's sampling each: in force as words, or open to be set.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { Choice } from '../frame/choice.js'
import { Stepper } from '../frame/stepper.js'
import { Comes } from './sampling_comes.js'
import { hundredfold, share } from './hundredth.js'

const LEVELS = ['S-1', 'S-2', 'S-3', 'S-4', 'I', 'II', 'III']
const AQLS = ['0.4', '0.65', '1', '1.5', '2.5', '4', '6.5', '10', '15']

/** @typedef {{name: string, known: any, stated: any, set: ((one: any) => any) | null, miss: () => any}} Props `known`: in force; `stated`: what the job states, or is about to */

/** @param {Props} props */
export function Critical({ known, stated, set, miss }) {
  const now = stated ?? known
  return html`<p class="big">${now ? say('sampling.critical.share', { share: hundredfold(now.defective), confidence: hundredfold(now.confidence) }) : say('sampling.critical.same')}</p>
    ${set && stated && html`
      <${Stepper} name="defective" label=${say('sampling.critical.defective')} value=${hundredfold(stated.defective)} unit="%" steps=${[1, 5]} low=${0.1} high=${100} onWrong=${miss}
        onChange=${(/** @type {string} */ value) => set({ ...stated, defective: share(value) })} />
      <${Stepper} name="confidence" label=${say('sampling.critical.confidence')} value=${hundredfold(stated.confidence)} unit="%" steps=${[1, 5]} low=${50} high=${99.9} onWrong=${miss}
        onChange=${(/** @type {string} */ value) => set({ ...stated, confidence: share(value) })} />`}
    ${now && html`<${Comes} rule="zero_plan" inputs=${(/** @type {number} */ lot) => ({ defective: now.defective, confidence: now.confidence, lot })} says="sampling.comes.zero" />`}`
}

/** @param {Props} props */
export function ByTable({ name, known, stated, set }) {
  const now = stated ?? known
  return html`<p class="big">${say('sampling.table', now)}</p>
    ${set && stated && html`
      <div class="blades"><${Choice} name=${`level-${name}`} label=${say('sampling.level')} hint=${say('sampling.level.hint')} value=${stated.level} onChange=${(/** @type {string} */ level) => set({ ...stated, level })}
        options=${LEVELS.map((one) => ({ value: one, label: one }))} /></div>
      <div class="blades"><${Choice} name=${`aql-${name}`} label=${say('sampling.aql')} hint=${say('sampling.aql.hint')} value=${stated.aql} onChange=${(/** @type {string} */ aql) => set({ ...stated, aql })}
        options=${AQLS.map((one) => ({ value: one, label: one }))} /></div>`}
    <${Comes} rule="plan" inputs=${(/** @type {number} */ lot) => ({ lot, level: now.level, aql: now.aql, inspection: 'normal' })} says="sampling.comes" />`
}

/** @param {Props} props */
export function Nonresponse({ known, stated, set, miss }) {
  const now = stated ?? known
  return html`<p class="big">${say('sampling.nonresponse.now', { share: hundredfold(now) })}</p>
    ${set && stated && html`<${Stepper} name="nonresponse" label=${say('sampling.nonresponse')} value=${hundredfold(stated)} unit="%" steps=${[1, 5]} low=${0} high=${50} onWrong=${miss}
      onChange=${(/** @type {string} */ value) => set(share(value))} />`}`
}

/** @param {Props} props */
export function Reduced({ known, stated, set }) {
  const now = stated ?? known
  return html`<p class="big">${say(now ? 'sampling.reduced.yes' : 'sampling.reduced.no')}</p>
    ${set && stated !== undefined && html`<${Choice} name="reduced" label=${say('sampling.reduced')} value=${stated ? 'yes' : 'no'} onChange=${(/** @type {string} */ one) => set(one === 'yes')}
      options=${['no', 'yes'].map((one) => ({ value: one, label: say(`sampling.reduced.${one}`) }))} />`}`
}

/** @param {Props} props */
export function HowMany({ name, known, stated, set, miss }) {
  return html`<p class="big">${say('sampling.places.now', { n: stated ?? known })}</p>
    ${set && stated !== undefined && html`<${Stepper} name=${name} label=${say(`sampling.${name}`)} value=${String(stated)} steps=${[1]} low=${1} high=${20} onWrong=${miss}
      onChange=${(/** @type {string} */ value) => (Number.isInteger(Number(value)) ? set(Number(value)) : miss())} />`}`
}
