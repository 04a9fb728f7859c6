// Updates of the app. A new build is fetched in the background and waits; it takes over only while no draft is
// open and nothing is being sent, or when a person says so. The hand-over ends in one reload.

import { openDrafts } from '../storage/drafts.js'
import { isBusy } from '../sync/status.js'
import { Trouble } from '../words/trouble.js'
import { askWorker, leaveInPeace, registerWorker } from './worker.js'

const HOUR = 3_600_000

/** @type {ServiceWorkerRegistration | null} */
let registration = null
let handingOver = false

/** Register the worker and look for updates: at start, when the page is seen again, every hour. */
export async function startUpdates() {
  try {
    registration = await registerWorker()
  } catch {
    // no worker without signal on a first visit: `readiness` says so
  }
  if (!registration) return
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    if (handingOver) location.reload() // not at a first install, which changes nothing under the page
  })
  addEventListener('pageshow', look)
  document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && look())
  setInterval(look, HOUR)
  registration.addEventListener('updatefound', watch)
  watch()
  await applyIfQuiet()
}

/** Is a new build here, whole and waiting? */
export function updateWaiting() {
  return Boolean(registration?.waiting && navigator.serviceWorker.controller)
}

/** Let the waiting build take over now: a person said so. The page loads anew. @throws {Trouble} `shell.update_stuck` */
export async function applyUpdate() {
  if (!updateWaiting()) return
  handingOver = true
  leaveInPeace(true)
  const next = registration?.waiting ?? null
  askWorker('take over', next)
  // Chromium looks whether the old worker rests only when one of its events ends; a resting one would hold the
  // place for minutes. So it is given events: a fetch that it answers from the phone.
  for (let tries = 0; tries < 30 && next?.state === 'installed'; tries += 1) {
    await new Promise((resolve) => setTimeout(resolve, 500))
    await fetch('/shell.json').catch(() => {})
  }
  leaveInPeace(false)
  if (next?.state === 'installed') throw new Trouble('shell.update_stuck')
}

/** Let it take over if nobody is in the middle of anything. @returns {Promise<boolean>} whether it does */
export async function applyIfQuiet() {
  if (!updateWaiting() || isBusy() || (await openDrafts())) return false
  await applyUpdate()
  return true
}

/** Remove caches and workers and load afresh. Never touches the database. Needs signal. */
export async function repairApp() {
  for (const name of await caches.keys()) await caches.delete(name)
  for (const one of await navigator.serviceWorker.getRegistrations()) await one.unregister()
  location.reload()
}

function look() {
  registration?.update().catch(() => {})
  applyIfQuiet().catch(() => {})
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
