// The inspection that a crew's series calls for on the day to be drawn: asked of the rulebook, which decides the days before.

import { useEffect, useState } from '../frame/view.js'
import { ask } from '../rules/ask.js'

/**
 * @param {any} record @param {string} crew @param {string} area @param {string} day
 * @returns {string} `normal`, `tightened`, `reduced` or `stopped`; `normal` until it is known, as for a new crew
 */
export function useCalledFor(record, crew, area, day) {
  const [called, setCalled] = useState('normal')
  useEffect(() => {
    let here = true
    const hold = (/** @type {string} */ state) => { if (here) setCalled(state) }
    if (crew.trim() && record.areas[area] && day) ask({ call: 'calls_for', record, crew, area, day }).then(hold, () => hold('normal'))
    else hold('normal')
    return () => { here = false }
  }, [record, crew, area, day])
  return called
}
