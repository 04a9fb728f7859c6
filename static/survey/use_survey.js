// What the record tells of a place, asked of the rulebook anew when either changes.

import { useEffect, useState } from '../frame/view.js'
import { Refused, ask } from '../rules/ask.js'
import { known, say } from '../words/say.js'
import { Trouble } from '../words/trouble.js'

/**
 * @param {any} record @param {import('./address.js').Place | null} place
 * @returns {{told: any, fault: any}} both null while it is asked
 */
export function useSurvey(record, place) {
  const [held, setHeld] = useState(/** @type {{told: any, fault: any}} */ ({ told: null, fault: null }))
  useEffect(() => {
    let here = true
    if (place) {
      ask({ call: 'survey', record, place })
        .then((told) => { if (here) setHeld({ told, fault: null }) })
        .catch((fault) => { if (here) setHeld({ told: null, fault: inWords(fault) }) })
    }
    return () => { here = false }
  }, [record, JSON.stringify(place)])
  return held
}

const FIELDS = /** @type {Record<string, string>} */ ({ area: 'survey.area', panel: 'survey.panel', from_low_end: 'survey.at', radius: 'survey.radius' })

/** @param {any} fault */
function inWords(fault) {
  if (!(fault instanceof Refused)) return fault
  const code = known(`refused.${fault.code}`) ? `refused.${fault.code}` : 'refused.scope_unknown'
  return new Trouble(code, { field: say(FIELDS[fault.field] ?? 'survey.area'), value: fault.value ?? '—' })
}
