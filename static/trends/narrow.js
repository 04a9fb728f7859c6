// What trends are narrowed by: only what there is a choice of, each as many as one likes, and days.

import { html } from '../frame/view.js'
import { say } from '../words/say.js'
import { Choice } from '../frame/choice.js'
import { Problem } from '../frame/problem.js'
import { TextField } from '../frame/text_field.js'
import { NAMES, inUse } from './wanted.js'

/** @param {{told: any, wanted: import('./wanted.js').Wanted, change: (wanted: import('./wanted.js').Wanted) => void, named: import('./named.js').Named, fault: any}} props */
export function Narrow({ told, wanted, change, named, fault }) {
  const used = inUse(wanted)
  const turn = (/** @type {string} */ name) => (/** @type {string} */ value) => {
    const before = wanted[name] ?? []
    change({ ...wanted, [name]: before.includes(value) ? before.filter((/** @type {string} */ one) => one !== value) : [...before, value] })
  }
  const offered = NAMES.map((name) => ({ name, values: worth(told, wanted, name) })).filter(({ values }) => values.length > 1)
  return html`<p role="status" data-name="narrowed">${used.length ? say('trends.narrowed', { names: used.map((name) => said(name, wanted, named)).join('; ') }) : say('trends.narrow.none')}</p>
    <${Problem} fault=${fault} />
    <details class="filters"><summary class="press" data-name="narrow">${say('trends.narrow')}</summary>
      ${offered.map(({ name, values }) => html`<${Choice} key=${name} many name=${`narrow-${name}`} label=${say(`trends.by.${name}`)} value=${wanted[name] ?? []} onChange=${turn(name)} options=${values.map((value) => ({ value, label: named(name, value) }))} />`)}
      ${['from', 'to'].map((name) => html`<${TextField} key=${name} name=${`narrow-${name}`} type="date" label=${say(`trends.${name}`)} value=${wanted[name] ?? ''} onChange=${(/** @type {string} */ day) => change({ ...wanted, [name]: day })} />`)}
    </details>
    ${used.length > 0 && html`<button type="button" class="press" data-name="narrow-all" onClick=${() => change({})}><span class="label">${say('trends.all')}</span></button>`}`
}

/** What is worth choosing: of items those that failed, and those chosen before. @param {any} told @param {any} wanted @param {string} name @returns {string[]} */
function worth(told, wanted, name) {
  if (name !== 'item') return told.choices[name]
  const failed = told.pareto.by.item.map((/** @type {any} */ one) => one.key)
  return told.choices.item.filter((/** @type {string} */ key) => failed.includes(key) || wanted.item?.includes(key))
}

/** @param {string} name @param {any} wanted @param {import('./named.js').Named} named */
function said(name, wanted, named) {
  if (name === 'from' || name === 'to') return `${say(`trends.${name}`)} ${wanted[name]}`
  return wanted[name].map((/** @type {string} */ key) => named(name, key)).join(', ')
}
