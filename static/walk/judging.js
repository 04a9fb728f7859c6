// Ask the rulebook about a reading, and hold its answer for the screen. Nothing is judged here.

import { useEffect, useState } from '../frame/view.js'
import { ask } from '../rules/ask.js'

/**
 * @param {{record: any, walk: any, station: any, area: any, item: any, reading: any}} known
 * @returns {any} the rulebook's answer, or null while there is no reading
 */
export function useVerdict({ record, walk, station, area, item, reading }) {
  const [answer, setAnswer] = useState(/** @type {any} */ (null))
  const asked = JSON.stringify([reading, area?.id, walk?.digest])
  useEffect(() => {
    let here = true
    setAnswer(null)
    if (item?.rule && reading) {
      const context = { job: record.job, assembly: record.assemblies[area?.assembly] ?? null, area, walk, station, reading }
      ask({ call: 'judge_item', item, context }).then((found) => { if (here) setAnswer(found) }, (fault) => {
        if (here) setAnswer({ rule: item.rule.name, verdict: 'not_determinable', reason: { code: fault.code ?? 'no_reading', facts: { field: fault.field, value: fault.value } }, values: {}, inputs: {} })
      })
    }
    return () => { here = false }
  }, [asked])
  return answer
}
