// May work be recorded in this window? First installed, then enrolled, then recorded: where a browser may clear what is
// kept without asking, that is said before anything is kept.

import { currentRow } from '../people/current.js'
import { draftsOf } from '../storage/drafts.js'
import { readMeta, writeMeta } from '../storage/meta.js'
import { installState } from './install.js'
import { isAndroid, isApple, isStandalone } from './system.js'

let read = false // by somebody, since this page was opened

/** Known at once: this is a plain window of a system that records only from its home screen. */
export function homeScreenFirst() {
  return isApple() && !isStandalone()
}

/** @returns {Promise<'yes' | 'install' | 'finish' | 'warn'>} `finish`: what was begun here is nowhere else, so it is ended here;
 *   `warn`: the browser has promised nothing, and nobody was told */
export async function recordingHere() {
  if (homeScreenFirst()) return (await draftsOf((await currentRow())?.id ?? '')).length ? 'finish' : 'install'
  if (!isAndroid() || read || (await installState()).kept || (await readMeta(['warned']))) return 'yes'
  return 'warn'
}

/** A person has read it. Where that cannot be kept it is told again by the next page, and stands in nobody's way. */
export async function warned() {
  read = true
  await writeMeta(['warned'], { at: new Date().toISOString() }).catch(() => {})
}
