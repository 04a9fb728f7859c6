// Pictures of the findings on somebody's own lists come to the phone by themselves while there is signal: whoever stands
// before the place without any has them.

import { currentPerson } from '../people/current.js'
import { bringAlong, broughtBytes, elsewhere } from '../photo/along.js'
import { ownPictures } from '../record/own_pictures.js'
import { jobRecord, jobs, seesPart } from '../record/load.js'
import { status } from '../sync/status.js'
import { Trouble } from '../words/trouble.js'

// Twenty pictures of a phone's camera at some 3 MB (from memory): more findings than a crew puts right in a day, and
// little beside the pictures it takes itself. The others come by a press on the list.
export const MOST_BYTES = 64 * 1024 * 1024
const ASK_AGAIN = 600_000 // ms before asking again for one that the office did not have

/** @type {Promise<{sha256: string, job: string}[]> | null} */
let wanted = null
/** @type {Promise<void> | null} */
let bringing = null
/** @type {Map<string, number>} sha256 -> when the office did not have it */
const absent = new Map()

/** Call once at start. */
export function startOwnPictures() {
  const forget = () => { wanted = null }
  for (const name of ['seamwalk:kept', 'seamwalk:person']) addEventListener(name, forget)
  addEventListener('seamwalk:sync', () => {
    if (status().phase !== 'idle' || !status().online || bringing) return // what is to be sent goes first
    forget()
    bringing = bring().catch(() => {}).finally(() => { bringing = null })
  })
}

/** How many pictures of the person's own lists are not on this phone. @returns {Promise<number>} */
export async function missingPictures() {
  return (await elsewhere((await own()).map(({ sha256 }) => sha256))).length
}

function own() {
  wanted ??= listed().catch(() => [])
  return wanted
}

async function listed() {
  const person = await currentPerson()
  const all = []
  for (const { id } of await jobs()) {
    all.push(...ownPictures(await jobRecord(id), person, await seesPart(id)).map((sha256) => ({ sha256, job: id })))
  }
  return all
}

async function bring() {
  const all = await own()
  const names = all.map(({ sha256 }) => sha256)
  const away = new Set(await elsewhere(names))
  let bytes = await broughtBytes(names)
  for (const { sha256, job } of all) {
    if (bytes >= MOST_BYTES || status().phase !== 'idle' || /** @type {any} */ (navigator).connection?.saveData) return
    if (!away.has(sha256) || Date.now() - (absent.get(sha256) ?? -Infinity) < ASK_AGAIN) continue
    try {
      if (!(await bringAlong(sha256, job))) return
      bytes = await broughtBytes(names)
    } catch (fault) {
      if (!(fault instanceof Trouble) || fault.code !== 'outbox.photo_elsewhere') throw fault
      absent.set(sha256, Date.now())
    }
  }
}
