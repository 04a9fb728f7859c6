// Compare the server's fingerprint with one got by another way; and what this page leaves to the program.

import { say } from '../words/say.js'
import { element } from './element.js'

/** Digits in groups of four, to be read aloud. @param {string} fingerprint */
const grouped = (fingerprint) => element('p.print', { 'data-name': 'fingerprint' }, ...(fingerprint.match(/.{1,4}/g) ?? []).map((four) => element('span', null, four)))

/** @param {string | null} mine @param {string} typed @param {(typed: string) => void} compare */
export function trust(mine, typed, compare) {
  const field = /** @type {HTMLInputElement} */ (element('input', { id: 'fingerprint', 'data-name': 'fingerprint-typed', value: typed, autocomplete: 'off', autocapitalize: 'off', spellcheck: 'false' }))
  const form = element('form.stack', { submit: (/** @type {Event} */ event) => {
    event.preventDefault()
    compare(field.value)
  } },
  element('div.field', null, element('label', { for: 'fingerprint' }, say('verify_page.trust.label')), element('p.hint', null, say('verify_page.trust.hint')), field),
  element('button', { 'data-name': 'compare' }, say('verify_page.trust.press')))
  return element('section', null, element('h2', null, say('verify_page.trust.title')),
    ...(mine ? [element('p', null, say('verify_page.trust.own')), grouped(mine), form] : [element('p', null, say('verify_page.trust.none'))]))
}

/** @param {string} name of what was chosen */
export function notHere(name) {
  return element('section', null, element('h2', null, say('verify_page.not_here.title')),
    element('ul', null, ...['seals', 'verdicts', 'cut', 'fields'].map((one) => element('li', null, say(`verify_page.not_here.${one}`)))),
    element('p', null, say('verify_page.not_here.how')),
    element('p.note', null, element('code', null, `seamwalk verify ${/\s/.test(name) ? `"${name}"` : name}`)),
    element('p', null, say('verify_page.not_here.page')))
}
