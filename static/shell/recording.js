// May work be recorded in this window? First installed, then enrolled, then recorded: where a browser may clear what is
// kept without asking, that is said before anything is kept.

import { readMeta, writeMeta } from '../storage/meta.js'
import { installState } from './install.js'
import { isAndroid, isApple, isStandalone } from './system.js'

/** Known at once: this is a plain window of a system that records only from its home screen. */
export function homeScreenFirst() {
  return isApple() && !isStandalone()
}

/** @returns {Promise<'yes' | 'install' | 'warn'>} `warn`: the browser has promised nothing, and nobody was told */
export async function recordingHere() {
  if (homeScreenFirst()) return 'install'
  if (!isAndroid() || (await installState()).kept || (await readMeta(['warned']))) return 'yes'
  return 'warn'
}

/** A person has read it. */
export async function warned() {
  await writeMeta(['warned'], { at: new Date().toISOString() })
}
