// The service worker from the page's side: register it, ask it.

/** @returns {Promise<ServiceWorkerRegistration | null>} null where this browser has no workers */
export async function registerWorker() {
  if (!('serviceWorker' in navigator)) return null
  return navigator.serviceWorker.register('/sw.js', { updateViaCache: 'none' })
}

const PEACE = 60_000 // ms at most: whoever asked for it may be gone

let inPeace = false
/** @type {ReturnType<typeof setTimeout> | undefined} */
let over
// Every window of the app asks the one worker.
const windows = typeof document !== 'undefined' && 'BroadcastChannel' in globalThis ? new BroadcastChannel('seamwalk-worker') : null
if (windows) windows.onmessage = ({ data }) => hold(data === true)

/** A worker about to be followed by the next must come to rest: while `on`, no window asks it to prove anything, and
 * none sends by itself. @param {boolean} on */
export function leaveInPeace(on) {
  hold(on)
  windows?.postMessage(on)
}

/** Is the worker left in peace just now? */
export function leftInPeace() {
  return inPeace
}

/** @param {boolean} on */
function hold(on) {
  inPeace = on
  globalThis.window?.dispatchEvent(new CustomEvent('seamwalk:peace', { detail: on }))
  clearTimeout(over)
  if (on) over = setTimeout(() => hold(false), PEACE)
}

/**
 * @param {'prove' | 'progress' | 'rest' | 'take over'} what @param {ServiceWorker | null} worker @param {number} [limit] ms
 * @returns {Promise<any>} null where there is no worker or it does not answer
 */
export function askWorker(what, worker, limit = 10_000) {
  if (!worker || (inPeace && what === 'prove')) return Promise.resolve(null)
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel()
    const end = (/** @type {any} */ answer) => {
      port1.close()
      resolve(answer)
    }
    port1.onmessage = ({ data }) => end(data)
    setTimeout(end, limit, null)
    worker.postMessage({ ask: what }, [port2])
  })
}
