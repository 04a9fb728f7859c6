// The rulebook's layout of each area, asked of the worker one at a time and kept for as long as area and assembly stay
// what they are.

import { useEffect, useState } from '../frame/view.js'
import { ask } from '../rules/ask.js'

/** @type {Map<string, Promise<any>>} */
const known = new Map()
/** Asked for and not begun; what was asked for last comes first: it is what a person looks at now. @type {(() => Promise<void>)[]} */
const waiting = []
let busy = false

async function work() {
  if (busy) return
  busy = true
  for (let next = waiting.pop(); next; next = waiting.pop()) await next()
  busy = false
}

/** @param {string} call `layout`, `zones` or `stations` @param {any} record @param {any} area @returns {Promise<any>} null where the rulebook refuses */
export function laid(call, record, area) {
  const assembly = record.assemblies[area.assembly] ?? null
  const key = [call, area.digest, assembly?.digest].join('/')
  let found = known.get(key)
  if (!found) {
    found = new Promise((resolve) => waiting.push(() => ask({ call, area, assembly }).catch(() => null).then(resolve)))
    known.set(key, found)
    work()
  }
  return found
}

/**
 * Answers for several areas, as they come.
 * @param {string} call @param {any} record @param {any[]} areas @param {boolean} [wanted] @returns {Record<string, any>} by area id; missing until known
 */
export function useLaid(call, record, areas, wanted = true) {
  const [found, setFound] = useState(/** @type {Record<string, any>} */ ({}))
  const key = [wanted, ...areas.map((area) => [area.id, area.digest, record.assemblies[area.assembly]?.digest])].join()
  useEffect(() => {
    let here = true
    let fresh = /** @type {Record<string, any>} */ ({})
    let timer = 0
    // Together every fifth of a second: forty answers are not forty drawings of the screen.
    const tell = () => { timer = 0; if (here) setFound((old) => ({ ...old, ...fresh })); fresh = {} }
    if (wanted) for (const area of areas) laid(call, record, area).then((one) => { fresh[area.id] = one; timer ||= setTimeout(tell, 200) })
    return () => { here = false; clearTimeout(timer) }
  }, [key])
  return found
}
