// A job's trends as the record has them, told anew when it or what is wanted changes.

import { useEffect, useState } from '../frame/view.js'
import { Refused, ask } from '../rules/ask.js'
import { say } from '../words/say.js'
import { Trouble } from '../words/trouble.js'
import { asFarAsNeeded } from './as_needed.js'
import { asked } from './wanted.js'

/**
 * @param {any} record @param {import('./wanted.js').Wanted} wanted
 * @returns {{told: any, fault: any}} `told` keeps the last answer while a new one is on its way; a fault is of what was asked last
 */
export function useTrends(record, wanted) {
  const [known, setKnown] = useState(/** @type {{told: any, fault: any}} */ ({ told: null, fault: null }))
  useEffect(() => {
    let here = true
    ask({ call: 'trends', record: asFarAsNeeded(record), filters: asked(wanted) })
      .then((told) => { if (here) setKnown({ told, fault: null }) })
      .catch((fault) => { if (here) setKnown((old) => ({ ...old, fault: inWords(fault) })) })
    return () => { here = false }
  }, [record, JSON.stringify(asked(wanted))])
  return known
}

/** @param {any} fault */
function inWords(fault) {
  return fault instanceof Refused ? new Trouble(`refused.${fault.code}`, { field: say(`trends.${fault.field}`), value: fault.value }) : fault
}
