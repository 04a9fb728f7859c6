// Why the office did not take an item, in the language of now: the sentence is looked up by its code. The server's
// own sentence, in the language it was asked in, serves only where this phone knows no other.

import { html } from '../frame/view.js'
import { known, say } from '../words/say.js'

const FAMILIES = ['refusal', 'outbox', 'error']

/** @param {{code: string, field: string, value: string, message: string, wayOut: string, chunk?: number, facts?: any}} refusal */
export function refusalWords(refusal) {
  const facts = { ...refusal.facts, field: fieldName(refusal.field), value: refusal.value, chunk: refusal.chunk ?? '' }
  const key = FAMILIES.map((family) => `${family}.${refusal.code}`).find((one) => known(one) || known(`${one}.message`)) ?? refusal.code
  const own = [known(key) ? key : `${key}.message`, `${key}.way_out`].map((one) => whole(one, facts))
  return { text: own[0] ?? (refusal.message || refusal.code), way: own[0] ? own[1] ?? '' : refusal.wayOut }
}

/** The text, unless it speaks of facts that were not kept. @param {string} key @param {any} facts */
function whole(key, facts) {
  const text = known(key) ? say(key, facts) : null
  return text && !/\{\w+\}/.test(text) ? text : null
}

/** `body.slope` as people call it: the field, or its last part, or what the office wrote. @param {string} field */
export function fieldName(field) {
  const named = [field, field.split('.').at(-1)].map((name) => `field.${name}`).find(known)
  return named ? say(named) : field
}

/** @param {{refusal: any}} props */
export function Refusal({ refusal }) {
  const { text, way } = refusalWords(refusal)
  return html`<strong>${text}</strong>
    ${refusal.field && html`<p>${say('unsent.field', { field: fieldName(refusal.field), value: String(refusal.value ?? '') })}</p>`}
    ${way && html`<p>${way}</p>`}`
}
