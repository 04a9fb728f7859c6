// Which of several outlines is drawn at, and one more.

import { html } from '../frame/view.js'
import { Choice } from '../frame/choice.js'

/** @param {{names: string[], at: number, onPick: (at: number) => any, onAdd: (() => any) | null, label: string, addLabel: string}} props */
export function Which({ names, at, onPick, onAdd, label, addLabel }) {
  return html`<div class="stack">
    ${names.length > 1 && html`<${Choice} name="which" label=${label} value=${String(at)} onChange=${(/** @type {string} */ one) => onPick(Number(one))}
      options=${names.map((name, i) => ({ value: String(i), label: name || String(i + 1) }))} />`}
    <button type="button" class="press" data-name="add" disabled=${!onAdd} onClick=${() => onAdd?.()}>+ ${addLabel}</button>
  </div>`
}
