// Words for people, in the language they chose. Every sentence lives in a file of this folder, never in code.

/** The files of texts beside this one; a test compares the list with the folder. */
export const FILES = ['screens.json', 'instruments.json', 'rules.json', 'outbox.json', 'people.json', 'passkeys.json', 'office.json', 'shell.json', 'storage.json', 'entry.json', 'photos.json', 'card.json', 'fit.json', 'day.json', 'day_record.json', 'lots.json', 'coverage.json', 'audit.json', 'tickets.json', 'draw.json', 'plan.json', 'finding.json', 'trends.json', 'doubts.json', 'survey.json', 'copy.json', 'signing.json', 'package.json', 'reports.json']
export const LANGUAGES = ['en', 'es']

/** @type {Record<string, Record<string, string>>} key -> language -> text */
let texts = {}
let chosen = startLanguage()

/** Load all texts; a file that cannot be had leaves its keys bare and everything else readable. */
export async function loadWords() {
  const loaded = await Promise.all(FILES.map(async (name) => {
    try {
      return await (await fetch(new URL(name, import.meta.url))).json()
    } catch {
      return {}
    }
  }))
  texts = Object.assign({}, ...loaded)
  document.documentElement.lang = chosen
}

/** All texts, for a page that brings them with it. @param {Record<string, Record<string, string>>} all */
export function takeWords(all) {
  texts = all
  document.documentElement.lang = chosen
}

/** Whether there is a text under this key. @param {string} key */
export function known(key) {
  return key in texts
}

/**
 * The text under `key`, `{name}` replaced from `facts`. `key.one` is taken where `facts.n` is 1 and it exists.
 * An unknown key is returned as it is, so that nothing is ever blank.
 * @param {string} key @param {Record<string, any>} [facts] @returns {string}
 */
export function say(key, facts = {}) {
  const text = (facts.n === 1 && texts[`${key}.one`]) || texts[key]
  return fill(pick(text) ?? key, facts)
}

/** The right one of `{"en", "es"}`, as definitions carry them. @param {any} both @returns {string | undefined} */
export function pick(both) {
  return both && (both[chosen] ?? both.en)
}

/** @param {string} text @param {Record<string, any>} facts */
export function fill(text, facts) {
  return text.replace(/\{(\w+)\}/g, (whole, name) => (name in facts ? String(facts[name]) : whole))
}

export function language() {
  return chosen
}

/** @param {string} code `en` or `es`; remembered on this phone */
export function setLanguage(code) {
  chosen = LANGUAGES.includes(code) ? code : 'en'
  try {
    localStorage.setItem('seamwalk.language', chosen)
  } catch { /* a phone that keeps nothing still speaks */ }
  document.documentElement.lang = chosen
  window.dispatchEvent(new Event('seamwalk:language'))
}

function startLanguage() {
  try {
    const kept = localStorage.getItem('seamwalk.language')
    if (kept && LANGUAGES.includes(kept)) return kept
    return navigator.language.startsWith('es') ? 'es' : 'en'
  } catch {
    return 'en'
  }
}
