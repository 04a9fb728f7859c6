// The app's language, one press away wherever a person may be stuck for words.

import { html } from '../frame/view.js'
import { LANGUAGES, language, say, setLanguage } from '../words/say.js'
import { Choice } from '../frame/choice.js'

const OWN_NAMES = /** @type {Record<string, string>} */ ({ en: 'English', es: 'Español' })

export function Language() {
  return html`<${Choice} name="language" label=${say('language')} value=${language()} onChange=${setLanguage}
    options=${LANGUAGES.map((code) => ({ value: code, label: OWN_NAMES[code], lang: code }))} />`
}
