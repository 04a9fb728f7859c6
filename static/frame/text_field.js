// A plain text field: the phone's own keyboard and dictation work in it.

import { html } from './view.js'

/**
 * @param {{label: string, value: string, onChange: (value: string) => any, name: string, type?: string, hint?: string,
 *   lines?: number, autocomplete?: string, inputmode?: string}} props
 */
export function TextField({ label, value, onChange, name, type = 'text', hint, lines, autocomplete = 'off', inputmode }) {
  const id = `in-${name}`
  const put = (/** @type {any} */ event) => onChange(event.target.value)
  return html`<div class="field" data-name=${name}>
    <label for=${id}>${label}</label>
    ${hint && html`<p class="hint" id=${id + '-hint'}>${hint}</p>`}
    ${lines
      ? html`<textarea id=${id} rows=${lines} value=${value} onInput=${put} aria-describedby=${hint ? id + '-hint' : undefined}></textarea>`
      : html`<input id=${id} type=${type} value=${value} onInput=${put} autocomplete=${autocomplete} inputmode=${inputmode}
          autocapitalize="off" aria-describedby=${hint ? id + '-hint' : undefined} />`}
  </div>`
}
