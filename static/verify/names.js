// The names that a package may hold: the twin of inspect_app/evidence/package/names.py.

export const [BAGIT, INFO, PAYLOAD, TAGS] = ['bagit.txt', 'bag-info.txt', 'manifest-sha256.txt', 'tagmanifest-sha256.txt']
export const TOKENS = { enrolments: 'data/enrolments.txt', entries: 'data/entries.txt', receipts: 'data/receipts.txt', server: 'data/server-key.json' }
export const SHEET = 'data/package.json'
export const NEEDED = [BAGIT, INFO, PAYLOAD, TAGS, 'verify.html', SHEET, 'data/keys.json', ...Object.values(TOKENS)]

const PHOTO = /^data\/photos\/([0-9a-f]{64})\.(jpg|png|webp|heic|bin)$/
const DEFINITION = /^data\/definitions\/([A-Za-z0-9_-]{43})\.json$/
const REPORT = /^data\/reports\/([1-9][0-9]{0,8})-[a-z0-9_-]{1,80}\.pdf$/
// What a system puts by itself into folders that were looked at.
const SYSTEM = ['.DS_Store', 'Thumbs.db', 'desktop.ini']

/** The SHA-256 that a photo is named after. @param {string} name */
export const photoIn = (name) => PHOTO.exec(name)?.[1]
/** The digest that a definition is named after. @param {string} name */
export const definitionIn = (name) => DEFINITION.exec(name)?.[1]
/** The number of a report. @param {string} name */
export const reportIn = (name) => REPORT.exec(name)?.[1]
/** Whether the layout has a place for this name. @param {string} name */
export const belongs = (name) => NEEDED.includes(name) || [PHOTO, DEFINITION, REPORT].some((one) => one.test(name))
/** @param {string} name */
export const ofTheSystem = (name) => SYSTEM.includes(name.slice(name.lastIndexOf('/') + 1))
