// One round: everybody on this phone in turn, each under their own key, so that one person's trouble delays
// nobody else. Order of each: manifest, entries, what others recorded, tickets for draws, photos.

import { everyPerson } from '../people/current.js'
import { pinnedServer } from '../people/device.js'
import { rowsOf } from '../outbox/counts.js'
import { Trouble } from '../words/trouble.js'
import { pullDefinitions } from './definitions.js'
import { sendEntries } from './entries.js'
import { beat } from './lock.js'
import { sendManifest } from './manifest.js'
import { pullMissing } from './missing.js'
import { sendPhoto } from './photos.js'
import { pullEntries, pullJobs } from './pull.js'
import { heedRestorations } from './restored.js'
import { isDue } from './retry.js'
import { tell } from './status.js'
import { pullTickets } from './tickets.js'
import { deliveryToken } from '../people/token.js'
import { newerHere } from '../storage/database.js'

/**
 * @param {boolean} asked a person asked: refused items are offered again at once
 * @returns {Promise<{trouble: Trouble | null, moved: boolean}>} the first trouble met, and whether anything moved
 */
export async function round(asked) {
  const server = await pinnedServer()
  const people = (await everyPerson()).filter((person) => person.kid && person.enrolment)
  // Without the server's key no receipt can be believed: it comes back with the next sign-in.
  let trouble = server || !people.length ? null : new Trouble('people.no_key', { field: 'key', value: people[0].name })
  let moved = false
  const progress = () => {
    moved = true
    beat().catch(() => {})
    tell({ online: true, last: new Date().toISOString() })
  }
  for (const person of server ? people : []) {
    const steps = [() => sendText(person, server, asked, progress), () => receive(person, server, progress),
      () => sendAgain(person, server, progress),
      () => sendPictures(person, server, asked, progress)]
    for (const step of steps) {
      try {
        await beat().catch(() => {}) // no room for it, perhaps: what is sent makes room
        await step()
      } catch (fault) {
        const known = told(fault)
        trouble ??= known
        if (LINK.includes(known.code)) break // the next step would wait for the same dead link
      }
    }
  }
  return { trouble, moved }
}

/** A fault of ours, or of the browser's, is as little a reason to stop for the others. @param {unknown} fault */
function told(fault) {
  return fault instanceof Trouble ? fault : new Trouble('sync.unexpected', { value: String(fault) })
}

const LINK = ['sync.offline', 'sync.not_our_server', 'people.no_key']

/** What the server had confirmed and, set back to a backup, no longer has. @param {any} person @param {any} server @param {() => void} progress */
async function sendAgain(person, server, progress) {
  if ((await newerHere()) || !(await heedRestorations(server))) return
  progress()
  await sendText(person, server, false, progress)
}

/** @param {any} person @param {any} server @param {boolean} asked @param {() => void} progress */
async function sendText(person, server, asked, progress) {
  const rows = await rowsOf(person.id)
  if (!rows.length) return
  await tell({ phase: 'sending' })
  await sendManifest(person, rows)
  const now = Date.now()
  await sendEntries(person, server, rows.filter((row) => row.what === 'entry' && isDue(row, now, asked)), progress)
}

/** @param {any} person @param {any} server @param {() => void} progress */
async function receive(person, server, progress) {
  if (await newerHere()) return // what a newer build keeps is sent, and nothing is added to it
  const { scope } = await deliveryToken(person) // also of who signed out: with it the server says that it was set back
  if (person.hidden || scope !== 'full') return
  await tell({ phase: 'receiving' })
  const jobs = await pullJobs(person)
  await pullEntries(person, server, jobs, progress)
  // Before the definitions: the last of them to come makes the phone ready for no signal.
  const trouble = await pullTickets(person, server, jobs, progress)
  await pullDefinitions(progress)
  await pullMissing(person)
  if (trouble) throw trouble
}

/** @param {any} person @param {any} server @param {boolean} asked @param {() => void} progress */
async function sendPictures(person, server, asked, progress) {
  const now = Date.now()
  const rows = (await rowsOf(person.id)).filter((row) => row.what === 'photo' && isDue(row, now, asked))
  let trouble = null
  for (const row of rows.sort((a, b) => (a.at < b.at ? -1 : 1))) {
    await tell({ phase: 'sending' })
    try {
      await sendPhoto(person, server, row, progress)
    } catch (fault) {
      const known = told(fault)
      if (LINK.includes(known.code)) throw known
      trouble ??= known // this photo waits; the others still go
    }
  }
  if (trouble) throw trouble
}
