// The lines of a fit check, asked of the rulebook anew at every change, and the order they are read in.

import { useEffect, useState } from '../frame/view.js'
import { ask } from '../rules/ask.js'

export const WORST_FIRST = ['fail', 'too_close', 'not_determinable', 'pass']

/**
 * @param {{record: any, area: any, found: any, day: string}} known `found` null while it is not known
 * @returns {{lines: any[] | null, fault: any, settled: boolean}} `lines` in the rulebook's order, null until they are there;
 *   `settled`: they are those of what is asked now, not of what was asked a moment ago
 */
export function useLines({ record, area, found, day }) {
  const [known, setKnown] = useState(/** @type {{lines: any[] | null, fault: any, of: string}} */ ({ lines: null, fault: null, of: '' }))
  const asked = JSON.stringify([found, day, record.job.digest, area.digest, record.assemblies[area.assembly]?.digest])
  useEffect(() => {
    let here = true
    if (found) {
      ask({ call: 'fit', job: record.job, assembly: record.assemblies[area.assembly] ?? null, area, found, day }).then(
        (lines) => { if (here) setKnown({ lines, fault: null, of: asked }) }, (fault) => { if (here) setKnown({ lines: null, fault, of: asked }) })
    }
    return () => { here = false }
  }, [asked])
  return { ...known, settled: known.of === asked }
}

/** Lines by what they came to, the worst first; groups without a line are left out. @param {any[]} lines @returns {[string, any[]][]} */
export function grouped(lines) {
  return WORST_FIRST.map((verdict) => /** @type {[string, any[]]} */ ([verdict, lines.filter((one) => one.verdict === verdict)]))
    .filter(([, some]) => some.length > 0)
}
