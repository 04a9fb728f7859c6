// Updates of the app. A new build is fetched in the background and waits; it takes over only while no draft is
// open and nothing is being sent, or when a person says so. The hand-over ends in one reload.

import { openDrafts } from '../storage/drafts.js'
import { isBusy } from '../sync/status.js'
import { Trouble } from '../words/trouble.js'
import { enlist } from './enlist.js'
import { inHand } from './in_hand.js'
import { offered } from './offered.js'
import { askWorker, leaveInPeace, leftInPeace } from './worker.js'

const HOUR = 3_600_000
const LOOK = 300 // ms between looks at how it stands
const REST = 700 // ms without a question, after which the old worker may be ended
const RESTS = 20 // looks at whether it rests
const LEAVES = 10 // looks at whether it goes at once
const FADES = 140 // looks at whether it goes of itself

/** @type {ServiceWorkerRegistration | null} */
let registration = null
let handingOver = false // a person said so
let renewed = false // another window let the next build take over: this page is still the old one
let behind = false

/** Register the worker and look for updates: at start, when the page is seen again, every hour. */
export async function startUpdates() {
  if (!('serviceWorker' in navigator)) return
  let controlled = Boolean(navigator.serviceWorker.controller)
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    if (handingOver) return location.reload()
    renewed = controlled // a first install changes nothing under the page
    controlled = true
    applyIfQuiet().catch(() => {})
  })
  addEventListener('pageshow', look)
  addEventListener('hashchange', () => renewed && applyIfQuiet().catch(() => {})) // not amid what was just saved
  document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && look())
  setInterval(look, HOUR)
  await enlist((found) => {
    registration = found
    registration.addEventListener('updatefound', watch)
    watch()
  })
  await applyIfQuiet()
}

/** Is a new build here, whole and waiting, or running already in another window? */
export function updateWaiting() {
  return renewed || Boolean(registration?.waiting && navigator.serviceWorker.controller)
}

/** Does the office have a newer build, which this browser has looked for and not fetched? */
export function updateBehind() {
  return behind && !updateWaiting()
}

/** Let the waiting build take over now: a person said so. The page loads anew. @throws {Trouble} `shell.update_stuck` */
export async function applyUpdate() {
  if (!updateWaiting()) return
  handingOver = true
  try {
    await handOver(FADES)
  } catch (fault) {
    handingOver = false // what goes through later finds somebody at work, perhaps
    throw fault
  }
}

/**
 * The page loads anew once the next build has taken over: at once where a person said so, else if it is still quiet then.
 * Chromium ends the old worker once, when the next is told to take over. A question that comes while it ends, from any
 * window, starts it again, and then only its browser's half minute without a question ends it: so it must rest before,
 * and where it did start again, nobody asks it anything. (Chromium 156; its `ServiceWorker` trace shows both.)
 * @param {number} patience looks more, where it does not go at once @throws {Trouble} `shell.update_stuck`
 */
async function handOver(patience) {
  if (renewed) return location.reload()
  const next = registration?.waiting ?? null
  leaveInPeace(true)
  try {
    const rests = async () => ((await askWorker('rest', navigator.serviceWorker.controller, 1000)) ?? REST) >= REST
    if (!(await becomes(rests, RESTS)) && !patience) throw new Trouble('shell.update_stuck') // another time, then
    askWorker('take over', next)
    if (!(await becomes(() => next?.state !== 'installed', LEAVES + patience))) throw new Trouble('shell.update_stuck')
  } finally {
    leaveInPeace(false)
  }
}

/** @param {() => any} what @param {number} looks @returns {Promise<boolean>} whether it came true within so many looks */
async function becomes(what, looks) {
  for (let left = looks; !(await what()); left -= 1) {
    if (left <= 0) return false
    await new Promise((resolve) => setTimeout(resolve, LOOK))
  }
  return true
}

/** Let it take over if nobody is in the middle of anything. @returns {Promise<boolean>} whether it does */
export async function applyIfQuiet() {
  if (!updateWaiting() || isBusy() || inHand() || (await openDrafts())) return false
  await handOver(0)
  return true
}

async function look() {
  try {
    await registration?.update()
    behind = await leftBehind()
  } catch {
    // no signal: the next look asks again
  }
  if (!(await applyIfQuiet().catch(() => false)) && behind) window.dispatchEvent(new CustomEvent('seamwalk:update'))
}

/** A home-screen app of some systems asks for the worker only when it is opened cold. */
async function leftBehind() {
  if (!registration?.active || registration.installing || registration.waiting || leftInPeace()) return false
  const theirs = await offered()
  const ours = await (await fetch('/shell.json')).json() // answered by the worker
  return Boolean(theirs && navigator.serviceWorker.controller && ours.build !== theirs && !registration.installing)
}

/** Tell the window once a new build is whole. */
function watch() {
  const worker = registration?.installing
  worker?.addEventListener('statechange', () => {
    if (worker.state === 'installed' && navigator.serviceWorker.controller) {
      window.dispatchEvent(new CustomEvent('seamwalk:update'))
    }
  })
}
