// One edge of the outline: its true length, what it is, and where a corner more or less is wanted.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { Stepper } from '../frame/stepper.js'
import { Choice } from '../frame/choice.js'
import { KINDS, long, split, text } from './outline.js'

/** @param {{draft: any, at: number, make: any, stretch: any, select: (one: any) => any}} props */
export function Edge({ draft, at, make, stretch, select }) {
  const typed = draft.lengths[at]
  const value = typed === '' ? null : typed ?? text(long(draft.points, at))
  const name = (/** @type {string} */ kind) => {
    make((/** @type {any} */ old) => ({ edges: old.edges.map((/** @type {any} */ one, /** @type {number} */ i) => (i === at ? kind : one)) }))
    const next = draft.edges.findIndex((/** @type {any} */ one, /** @type {number} */ i) => !one && i !== at)
    if (!draft.edges[at] && next >= 0) select({ what: 'edge', at: next }) // on to the next without a name
  }
  return html`<div class="stack edge-panel" data-name="edge-panel" data-at=${at}>
    <h3>${say('draw.edge', { n: at + 1, of: draft.points.length })}</h3>
    <${Stepper} key=${'long' + at} name="edge-length" label=${say('draw.edge.length')} hint=${typed ? say('draw.edge.held') : say('draw.edge.gives')} value=${value} unit=${draft.unit} steps=${draft.unit === 'm' ? [0.1, 1] : [0.5, 5]} low=${0.01} high=${2000}
      onChange=${(/** @type {string} */ one) => stretch(at, one)} onWrong=${() => stretch(at, '')} />
    ${typed !== null && html`<button type="button" class="press" data-name="let-go" onClick=${() => stretch(at, null)}>${say('draw.edge.let_go')}</button>`}
    <${Choice} name="edge-kind" label=${say('draw.edge.kind')} value=${draft.edges[at]} onChange=${name}
      options=${KINDS.map((kind) => ({ value: kind, label: say(`edge.${kind}`) }))} />
    <button type="button" class="press" data-name="add-corner" onClick=${() => { make((/** @type {any} */ old) => split(old, at)); select({ what: 'corner', at: at + 1 }) }}>${say('draw.add_corner')}</button>
  </div>`
}
