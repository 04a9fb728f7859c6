// Ask the rulebook for an area's card, again at every change of the metal; the last one stays until the next is there.

import { useEffect, useState } from '../frame/view.js'
import { ask } from '../rules/ask.js'

/**
 * @param {any} job @param {any} assembly @param {any} area @param {any} metal a quantity, or null while it is not measured
 * @returns {any} what `card` of `inspect_app/record/card.py` gives; null until the first answer
 */
export function useCard(job, assembly, area, metal) {
  const [card, setCard] = useState(/** @type {any} */ (null))
  useEffect(() => {
    let here = true
    ask({ call: 'card', job, assembly, area, metal_now: metal }).then((found) => { if (here) setCard(found) }, (fault) => {
      if (here) setCard({ kind: 'none', reason: { code: fault.code ?? 'no_reading', facts: { field: fault.field, value: fault.value } }, columns: [], pieces: [] })
    })
    return () => { here = false }
  }, [job.digest, assembly.digest, area.digest, JSON.stringify(metal)])
  return card
}
