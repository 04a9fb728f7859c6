// The page: choose a package, watch it being checked, read what holds. Everything stays on this device.

import { LANGUAGES, language, say, setLanguage, takeWords } from '../words/say.js'
import { check, fingerprintIn, serverKnown } from './check.js'
import { element } from './element.js'
import { SHEET } from './names.js'
import { objectIn, packageInFolder, packageInZip } from './package.js'
import { seen } from './seen.js'
import { groups, verdict } from './told.js'
import { notHere, trust } from './trust.js'
import { Unreadable } from './unreadable.js'

/** @typedef {{name: string, files: import('./package.js').Files, found: import('./check.js').Found, mine: string | null,
 *   sheet: Record<string, any>}} Checked */

const { words, ...known } = JSON.parse(document.getElementById('known')?.textContent ?? '')
const page = /** @type {HTMLElement} */ (document.getElementById('page'))
const NAMES = { en: 'English', es: 'Español' }
/** @type {Checked | null} */
let checked = null
/** @type {{code: string, facts: Record<string, any>} | null} */
let fault = null
let typed = ''

takeWords(words)
show()

function show() {
  document.title = say('verify_page.title')
  page.replaceChildren(head(), ...(checked ? result(checked) : fault ? [refused(fault), choose()] : [about(), choose()]))
}

function head() {
  return element('header.top', null,
    element('div', null, element('p.over', null, say('verify_page.over')), element('h1', { tabindex: '-1' }, say('verify_page.title'))),
    element('div.languages', { role: 'group', 'aria-label': say('verify_page.language') }, ...LANGUAGES.map((code) => element('button', {
      type: 'button', lang: code, 'data-name': `language-${code}`, 'aria-pressed': String(code === language()), click: () => {
        setLanguage(code)
        show()
      },
    }, NAMES[/** @type {'en'} */ (code)]))))
}

function about() {
  return element('section', null, element('p.big', null, say('verify_page.lead')), element('p.note', null, say('verify_page.not_evidence')))
}

function choose() {
  const zip = input({ accept: '.zip,application/zip' }, async ([file]) => run(file.name, () => packageInZip(file)))
  const folder = input({ webkitdirectory: true }, async (files) => run(files[0].webkitRelativePath.split('/')[0], async () => packageInFolder(files)))
  return element('section', null, element('div.ways', null,
    element('button.main', { type: 'button', 'data-name': 'choose-zip', click: () => zip.click() }, say('verify_page.choose.zip'), element('span.under', null, say('verify_page.choose.zip.under'))),
    'webkitdirectory' in folder && element('button', { type: 'button', 'data-name': 'choose-folder', click: () => folder.click() }, say('verify_page.choose.folder'), element('span.under', null, say('verify_page.choose.folder.under')))),
  zip, folder)
}

/** @param {Record<string, any>} attributes @param {(files: File[]) => void} take */
function input(attributes, take) {
  const made = /** @type {HTMLInputElement} */ (element('input.gone', { ...attributes, type: 'file', tabindex: '-1', 'aria-hidden': 'true', change: () => made.files?.length && take([...made.files]) }))
  return made
}

/** @param {string} name @param {() => Promise<import('./package.js').Files>} open */
async function run(name, open) {
  const bar = /** @type {HTMLProgressElement} */ (element('progress', { max: '1', value: '0', 'aria-labelledby': 'share' }))
  const share = element('p.big', { id: 'share', 'data-name': 'progress' })
  const progress = (/** @type {number} */ part) => {
    bar.value = part
    share.textContent = say('verify_page.working', { percent: Math.floor(part * 100) })
  }
  progress(0)
  page.replaceChildren(head(), element('section', null, share, bar, element('p.hint', null, say('verify_page.working.under'))))
  checked = fault = null
  typed = ''
  try {
    if (!globalThis.crypto?.subtle) throw new Unreadable('no_crypto')
    const files = await open()
    const sheet = await objectIn(files, SHEET).catch(() => ({}))
    checked = { name, files, sheet, mine: await fingerprintIn(files), found: await check(files, known, progress) }
  } catch (error) {
    fault = error instanceof Unreadable ? error : { code: 'other', facts: { name: error instanceof Error ? error.name : String(error) } }
  }
  show()
  scrollTo(0, 0)
  page.querySelector('h1')?.focus()
}

/** @param {{code: string, facts: Record<string, any>}} fault */
function refused({ code, facts }) {
  return element('section.end.fails', { role: 'alert', 'data-name': 'unreadable', 'data-code': code },
    element('p.verdict', null, element('span.sign', { 'aria-hidden': 'true' }, '✗'), ` ${say('verify_page.unreadable')}`),
    element('p', null, say(`verify_page.unreadable.${code}`, { name: '', ...facts })))
}

/** @param {Checked} checked */
function result({ name, files, found, mine, sheet }) {
  const facts = [...found.facts, serverKnown(typed, mine)]
  return [
    verdict(facts, name), ...groups(facts),
    trust(mine, typed, (text) => {
      typed = text
      show()
      page.querySelector('[data-fact="server_known"]')?.scrollIntoView({ block: 'center' })
    }),
    notHere(name), ...seen(found, files, sheet),
    element('section', null, element('button.main', { type: 'button', 'data-name': 'again', click: () => {
      checked = null
      show()
      scrollTo(0, 0)
    } }, say('verify_page.again'))),
  ]
}
