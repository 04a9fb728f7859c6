// Why it came about: one of a short list, the definition's own or the common one, and own words beside it.

import { html } from '../frame/view.js'
import { pick, say, known } from '../words/say.js'
import { causesOf } from '../checklist/causes.js'
import { Choice } from '../frame/choice.js'
import { TextField } from '../frame/text_field.js'

/** A cause in words. @param {any} definition or null @param {{code: string | null, words: string} | null | undefined} cause @returns {string} */
export function causeWords(definition, cause) {
  if (!cause) return ''
  const own = causesOf(definition).find((one) => one.code === cause.code)
  const name = own ? nameOf(own) : cause.code ? (known(`cause.${cause.code}`) ? say(`cause.${cause.code}`) : cause.code) : ''
  return [name, cause.words].filter(Boolean).join(': ')
}

/** @param {{code: string, en?: string, es?: string}} one */
function nameOf(one) {
  return one.en ? pick(one) ?? one.code : say(`cause.${one.code}`)
}

/** @param {{definition: any, code: string | null, words: string, change: (patch: any) => any}} props */
export function Cause({ definition, code, words, change }) {
  return html`<${Choice} name="cause" label=${say('assign.cause')} hint=${say('assign.cause.hint')} value=${code ?? ''} onChange=${(/** @type {string} */ one) => change({ code: one === code ? null : one })}
      options=${causesOf(definition).map((one) => ({ value: one.code, label: nameOf(one) }))} />
    <${TextField} name="cause-words" lines=${2} label=${say('assign.cause_words')} value=${words} onChange=${(/** @type {string} */ text) => change({ words: text })} />`
}
