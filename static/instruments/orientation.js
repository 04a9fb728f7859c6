// The phone's own sense of how it lies, from the browser's deviceorientation events.

import { lying } from './lying.js'

const PATIENCE = 2000 // ms for a first reading; a phone that has the sensor tells within a tenth of that

/** Some phones want to be asked, on a press. @returns {Promise<boolean>} */
export async function mayFeel() {
  const ask = /** @type {any} */ (globalThis.DeviceOrientationEvent)?.requestPermission
  if (!ask) return true
  try {
    return (await ask.call(globalThis.DeviceOrientationEvent)) === 'granted'
  } catch {
    return false
  }
}

/**
 * @param {(lies: {along: number, across: number}) => any} tell each reading, degrees
 * @param {() => any} silent called once when nothing was felt in two seconds
 * @returns {() => void} stop
 */
export function feel(tell, silent) {
  const timer = setTimeout(silent, PATIENCE)
  const heard = (/** @type {any} */ event) => {
    const lies = lying(event)
    if (!lies) return
    clearTimeout(timer)
    tell(lies)
  }
  addEventListener('deviceorientation', heard)
  return () => {
    clearTimeout(timer)
    removeEventListener('deviceorientation', heard)
  }
}
