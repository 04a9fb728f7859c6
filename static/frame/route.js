// Where the person is: the address's hash, so that the app opens cold without a server.

import { useEffect, useState } from './view.js'

/** `#/job/ID/walk/ID` -> `['job', ID, 'walk', ID]` @param {string} hash @returns {string[]} */
export function parts(hash) {
  return hash.replace(/^#\/?/, '').split('/').filter(Boolean).map(decodeURIComponent)
}

/** @param {...string | number} steps */
export function path(...steps) {
  return '#/' + steps.map((step) => encodeURIComponent(String(step))).join('/')
}

/** @param {...string | number} steps */
export function go(...steps) {
  location.hash = path(...steps)
}

export function useRoute() {
  const [route, setRoute] = useState(parts(location.hash))
  useEffect(() => {
    const follow = () => setRoute(parts(location.hash))
    addEventListener('hashchange', follow)
    follow() // it may have changed since the first rendering, with nobody listening yet
    return () => removeEventListener('hashchange', follow)
  }, [])
  return route
}
