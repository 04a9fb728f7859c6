// The service worker from the page's side: register it, ask it.

/** @returns {Promise<ServiceWorkerRegistration | null>} null where this browser has no workers */
export async function registerWorker() {
  if (!('serviceWorker' in navigator)) return null
  return navigator.serviceWorker.register('/sw.js', { updateViaCache: 'none' })
}

let inPeace = false

/** A worker about to be followed by the next must come to rest: while `on`, it is not asked to prove anything.
 * @param {boolean} on */
export function leaveInPeace(on) {
  inPeace = on
}

/**
 * @param {'prove' | 'take over'} what @param {ServiceWorker | null} worker @param {number} [limit] ms
 * @returns {Promise<any>} null where there is no worker or it does not answer
 */
export function askWorker(what, worker, limit = 10_000) {
  if (!worker || (inPeace && what === 'prove')) return Promise.resolve(null)
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = ({ data }) => resolve(data)
    setTimeout(() => resolve(null), limit)
    worker.postMessage({ ask: what }, [port2])
  })
}
