// Which phone this is, where its browser must be told what to do by hand. Only a hint: nothing kept depends on it.

/** iPhone or iPad: its browsers clear what a plain window keeps after some days without use, and a home-screen app keeps
 * apart from them what it has. @param {{userAgent: string, maxTouchPoints: number}} [it] */
export function isApple(it = navigator) {
  return /iPhone|iPad|iPod/.test(it.userAgent) || (/Macintosh/.test(it.userAgent) && it.maxTouchPoints > 1)
}

/** @param {{userAgent: string}} [it] */
export function isAndroid(it = navigator) {
  return /Android/.test(it.userAgent)
}

/** Opened from the home screen? */
export function isStandalone() {
  return matchMedia('(display-mode: standalone)').matches || /** @type {any} */ (navigator).standalone === true
}
