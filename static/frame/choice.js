// One of several big words. The chosen one says so in a word and a mark, not only by its fill.

import { html } from './view.js'

/**
 * @param {{label: string, options: {value: string, label: string, under?: string, lang?: string}[], value: any, onChange: (value: string) => any,
 *   many?: boolean, name?: string, hint?: string}} props `lang`: of an option's own label; with `many`, `value` is a list and each press turns one on or off
 */
export function Choice({ label, options, value, onChange, many, name, hint }) {
  const [full, open] = many ? '■□' : '●○'
  const on = (/** @type {string} */ one) => (many ? (value ?? []).includes(one) : value === one)
  return html`<fieldset class="choice" data-name=${name}>
    <legend>${label}</legend>
    ${hint && html`<p class="hint">${hint}</p>`}
    <div class="options">
      ${options.map((option) => html`<button type="button" key=${option.value} data-value=${option.value}
        class=${on(option.value) ? 'press on' : 'press'} aria-pressed=${on(option.value)} onClick=${() => onChange(option.value)}>
        <span class="tick" aria-hidden="true">${on(option.value) ? full : open}</span>
        <span class="label" lang=${option.lang}>${option.label}${option.under && html`<span class="under">${option.under}</span>`}</span>
      </button>`)}
    </div>
  </fieldset>`
}
