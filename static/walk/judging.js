// Ask the rulebook about a reading, and hold its answer for the screen. Nothing is judged here.

import { useLayoutEffect, useState } from '../frame/view.js'
import { ask } from '../rules/ask.js'

/**
 * @param {{record: any, walk: any, station: any, area: any, item: any, reading: any}} known
 * @returns {any} the rulebook's answer, or null while there is no reading, or no answer to just this one
 */
export function useVerdict({ record, walk, station, area, item, reading }) {
  const [held, setHeld] = useState(/** @type {{asked: string, answer: any}} */ ({ asked: '', answer: null }))
  const asked = JSON.stringify([reading, area?.digest, walk?.digest, record.job?.digest])
  useLayoutEffect(() => { // asked before the next picture of the screen, not after it
    let here = true
    const hold = (/** @type {any} */ answer) => { if (here) setHeld({ asked, answer }) }
    if (item?.rule && reading) {
      const context = { job: record.job, assembly: record.assemblies[area?.assembly] ?? null, area, walk, station, reading }
      ask({ call: 'judge_item', item, context }).then(hold, (fault) =>
        hold({ rule: item.rule.name, verdict: 'not_determinable', reason: { code: fault.code ?? 'no_reading', facts: { field: fault.field, value: fault.value } }, values: {}, inputs: {} }))
    }
    return () => { here = false }
  }, [asked])
  return item?.rule && reading && held.asked === asked ? held.answer : null // never the last reading's verdict beside this one
}
