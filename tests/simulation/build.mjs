// The app's own modules as one function, so that a page load is one call: every call has modules of its own. Pieces are
// cut smaller than on a real phone, so that a small photo has many; nothing else of the text is touched.

import { readFile } from 'node:fs/promises'
import { compileFunction } from 'node:vm'
import { build, stop } from 'esbuild'
import { GLOBALS } from './globals.mjs'

const ROOT = new URL('../../', import.meta.url)

/** @typedef {[file: string, from: string, to: string]} Change of the text of one file */

/** What files call their sizes, and how large it is here. @type {Record<string, Record<string, number>>} */
const SMALLER = {
  'static/photo/chunks.js': { CHUNK: 4096 }, 'static/storage/ballast.js': { BRICK: 1024 },
  'static/sync/photos.js': { SMALLEST: 512, piece: 1024 }, 'static/sync/batches.js': { BATCH: 4 },
  'static/sync/entries.js': { LEAST: 1024, MOST: 6000, bytes: 3000 }, 'static/sync/pull.js': { LEAST: 2, MOST: 12, page: 4 },
}

/** A release to come: it raises the database's version. @type {Change[]} */
const NEXT = [['static/storage/schema.js', 'export const VERSION = 1', 'export const VERSION = 2']]

/** @param {Change[]} planted bugs, or none @returns {Promise<Record<'this' | 'next', Function>>} */
export async function builds(planted = []) {
  const made = { this: await bundled(planted), next: await bundled([...NEXT, ...planted]) }
  await stop()
  return made
}

/** @param {Change[]} changes */
async function bundled(changes) {
  const used = new Set()
  const changing = { name: 'changing', setup: (/** @type {any} */ { onLoad }) => onLoad({ filter: /static\/.*\.js$/ }, async ({ path }) => {
    let contents = await readFile(path, 'utf8')
    for (const change of changes.filter(([file]) => path.endsWith(file))) {
      if (contents.split(change[1]).length !== 2) throw new Error(`${change[0]} does not say once: ${change[1]}`)
      contents = contents.replace(change[1], () => change[2])
      used.add(change)
    }
    return { contents: smaller(path, contents), loader: 'js' }
  }) }
  const { outputFiles } = await build({ entryPoints: [new URL('page.js', import.meta.url).pathname], bundle: true, write: false,
    format: 'iife', globalName: 'page', target: 'es2022', absWorkingDir: ROOT.pathname, plugins: [changing], logLevel: 'error' })
  const unused = changes.filter((change) => !used.has(change))
  if (unused.length) throw new Error(`no page loads ${unused.map(([file]) => file)}`)
  return compileFunction(`${outputFiles[0].text}\nreturn page`, GLOBALS, { filename: 'page.bundle.js' })
}

/** @param {string} path @param {string} text */
function smaller(path, text) {
  const sizes = Object.entries(SMALLER).find(([file]) => path.endsWith(file))?.[1] ?? {}
  for (const [name, size] of Object.entries(sizes)) {
    const declared = new RegExp(`^((?:export )?(?:const|let) ${name} = )[\\d_ *]+`, 'm')
    text = text.replace(declared, `$1${size} `)
  }
  return text
}
