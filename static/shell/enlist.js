// The first install, tried again until it is whole: a cut one leaves no worker behind that the browser would update.

import { registerWorker } from './worker.js'

const WAITS = [3_000, 10_000, 30_000, 60_000] // ms, the last for ever

/** @param {(registration: ServiceWorkerRegistration) => void} found told of each registration, a new one after each cut */
export async function enlist(found) {
  if (!('serviceWorker' in navigator)) return
  for (let tries = 0; ; tries += 1) {
    try {
      const registration = await registerWorker()
      if (registration) found(registration)
      if (registration && (await holds(registration))) return
    } catch {
      // no signal: `readiness` says what is missing
    }
    await pause(WAITS[Math.min(tries, WAITS.length - 1)])
  }
}

/** @param {ServiceWorkerRegistration} registration @returns {Promise<boolean>} false: it was cut */
async function holds({ active, waiting, installing }) {
  const worker = active ?? waiting ?? installing
  if (!worker) return false
  await new Promise((resolve) => {
    const look = () => worker.state !== 'installing' && worker.state !== 'parsed' && resolve(null)
    worker.addEventListener('statechange', look)
    look()
  })
  return worker.state !== 'redundant'
}

/** Until the time is over, or the browser says that there is a network. @param {number} wait ms */
function pause(wait) {
  return new Promise((resolve) => {
    setTimeout(resolve, wait)
    addEventListener('online', resolve, { once: true })
  })
}
